import { Body, Controller, Get, HttpCode, Param, Patch, Post, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { IdPipe } from '../http/id.pipe.js';
import { Me, Public, Roles, SignedIn } from './access.js';
import type { Actor } from './actor.js';
import { ChangePersonDto, FirstAccountDto, NewPersonDto, PersonView, SignInDto } from './people.dto.js';
import { PeopleService } from './people.service.js';
import { clearSessionCookie, SESSION_COOKIE, setSessionCookie } from './session-cookie.js';
import { SessionsService } from './sessions.service.js';

@Controller('api')
export class PeopleController {
  constructor(
    private readonly people: PeopleService,
    private readonly sessions: SessionsService,
  ) {}

  /** Makes the first account, with the setup code that the server printed. */
  @Public()
  @Post('first-account')
  createFirst(@Body() input: FirstAccountDto): Promise<PersonView> {
    return this.people.createFirst(input);
  }

  /** Signs in: sets the session cookie, and ends the session that came with the request. */
  @Public()
  @Post('session')
  @HttpCode(204)
  async signIn(
    @Body() input: SignInDto,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<void> {
    const former = request.cookies[SESSION_COOKIE];
    const { token } = await this.sessions.signIn(input.signInName, input.password, former);
    setSessionCookie(reply, token);
  }

  /** Signs out. */
  @SignedIn()
  @Post('session/end')
  @HttpCode(204)
  async signOut(
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<void> {
    const token = request.cookies[SESSION_COOKIE];
    if (token) await this.sessions.signOut(token);
    clearSessionCookie(reply);
  }

  /** Every account. */
  @Roles('manager')
  @Get('people')
  list(): Promise<PersonView[]> {
    return this.people.list();
  }

  /** Makes an account. */
  @Roles('manager')
  @Post('people')
  create(@Me() me: Actor, @Body() input: NewPersonDto): Promise<PersonView> {
    return this.people.create(me, input);
  }

  /** Changes roles, password or whether the account is open. */
  @Roles('manager')
  @Patch('people/:id')
  change(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() input: ChangePersonDto,
  ): Promise<PersonView> {
    return this.people.change(me, id, input);
  }
}
