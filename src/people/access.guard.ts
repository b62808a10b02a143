import { Injectable, type CanActivate, type ExecutionContext } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import type { FastifyRequest } from 'fastify';
import { Problem } from '../problem.js';
import { ACCESS, setActor, type Access } from './access.js';
import { SESSION_COOKIE } from './session-cookie.js';
import { SessionsService } from './sessions.service.js';

/** Stands before every route. What no mark opens stays closed. */
@Injectable()
export class AccessGuard implements CanActivate {
  constructor(
    private readonly reflector: Reflector,
    private readonly sessions: SessionsService,
  ) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    const request = context.switchToHttp().getRequest<FastifyRequest>();
    const access = this.reflector.getAllAndOverride<Access | undefined>(ACCESS, [
      context.getHandler(),
      context.getClass(),
    ]);
    const token = request.cookies[SESSION_COOKIE];
    const actor = token ? await this.sessions.whoIs(token) : undefined;
    if (actor) setActor(request, actor);
    if (access === 'public') return true;
    if (!actor) throw new Problem('sign_in_first', 'This needs a signed-in person.');
    if (access === 'signedIn') return true;
    if (access?.some((role) => actor.roles.includes(role))) return true;
    throw new Problem('not_your_role', `This needs the role ${access?.join(' or ') ?? 'of nobody'}.`);
  }
}
