import { createParamDecorator, SetMetadata, type ExecutionContext } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import { Problem } from '../problem.js';
import type { Actor } from './actor.js';
import type { Role } from './role.js';

/** Who may use a route: everyone, everyone signed in, or holders of one of these roles. */
export type Access = 'public' | 'signedIn' | readonly Role[];

export const ACCESS = 'access';

/** Marks a route as open to everyone. A route without a mark is closed to all. */
export const Public = () => SetMetadata(ACCESS, 'public' satisfies Access);

/** Opens a route to everyone signed in. */
export const SignedIn = () => SetMetadata(ACCESS, 'signedIn' satisfies Access);

/** Opens a route to people who hold one of these roles. */
export const Roles = (...roles: Role[]) => SetMetadata(ACCESS, roles satisfies Access);

const actors = new WeakMap<FastifyRequest['raw'], Actor>();

/** Remembers who the request comes from. Called by the guard only. */
export function setActor(request: FastifyRequest, actor: Actor): void {
  actors.set(request.raw, actor);
}

/** Who the request comes from, or undefined of a visitor. */
export function actorOf(request: FastifyRequest): Actor | undefined {
  return actors.get(request.raw);
}

/** The signed-in person, as a handler's argument. */
export const Me = createParamDecorator((_: unknown, context: ExecutionContext): Actor => {
  const actor = actorOf(context.switchToHttp().getRequest<FastifyRequest>());
  if (!actor) throw new Problem('sign_in_first', 'This needs a signed-in person.');
  return actor;
});
