import { Body, Controller, Get, Param, Post, Query, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { answerForm, answerPage } from '../http/answer-form.js';
import { IdPipe } from '../http/id.pipe.js';
import { readForm, readInput } from '../http/input.js';
import { Problem } from '../problem.js';
import { Me, Public, Roles, SignedIn } from './access.js';
import type { Actor } from './actor.js';
import { DemoAccounts } from './demo-accounts.js';
import { firstRunPage, peoplePage, signInPage } from './people.view.js';
import { ChangePersonDto, FirstAccountDto, NewPersonDto, SignInDto } from './people.dto.js';
import { PeopleService } from './people.service.js';
import { clearSessionCookie, SESSION_COOKIE, setSessionCookie } from './session-cookie.js';
import { SessionsService } from './sessions.service.js';

@Controller()
export class PeoplePages {
  constructor(
    private readonly people: PeopleService,
    private readonly sessions: SessionsService,
    private readonly demo: DemoAccounts,
  ) {}

  @Public()
  @Get('first-run')
  async firstRun(@Res() reply: FastifyReply): Promise<void> {
    if (await this.people.hasAccounts()) return reply.redirect('/sign-in', 303);
    return answerPage(reply, firstRunPage({}));
  }

  @Public()
  @Post('first-run')
  async createFirst(@Body() fields: object, @Res() reply: FastifyReply): Promise<void> {
    const form = readForm(fields);
    await answerForm(
      reply,
      async () => {
        const input = await readInput(FirstAccountDto, form);
        await this.people.createFirst(input);
        const { token } = await this.sessions.signIn(input.signInName, input.password);
        setSessionCookie(reply, token);
        return '/';
      },
      (problem) => firstRunPage({ form, problem }),
    );
  }

  @Public()
  @Get('sign-in')
  async signInForm(@Query('then') then: string | undefined, @Res() reply: FastifyReply): Promise<void> {
    if (!(await this.people.hasAccounts())) return reply.redirect('/first-run', 303);
    return answerPage(reply, signInPage({ then: safePath(then), demo: this.demo.list() }));
  }

  @Public()
  @Post('sign-in')
  async signIn(
    @Body() fields: object,
    @Query('then') then: string,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const form = readForm(fields);
    await answerForm(
      reply,
      async () => {
        const input = await readInput(SignInDto, form);
        const former = request.cookies[SESSION_COOKIE];
        const { token } = await this.sessions.signIn(input.signInName, input.password, former);
        setSessionCookie(reply, token);
        return safePath(then);
      },
      (problem) => signInPage({ then: safePath(then), form, problem, demo: this.demo.list() }),
    );
  }

  @SignedIn()
  @Post('sign-out')
  async signOut(@Req() request: FastifyRequest, @Res() reply: FastifyReply): Promise<void> {
    const token = request.cookies[SESSION_COOKIE];
    if (token) await this.sessions.signOut(token);
    clearSessionCookie(reply);
    await reply.redirect('/sign-in', 303);
  }

  @Roles('manager')
  @Get('people')
  async list(@Me() me: Actor, @Res() reply: FastifyReply): Promise<void> {
    await answerPage(reply, peoplePage({ me, people: await this.people.list() }));
  }

  @Roles('manager')
  @Post('people')
  async create(@Me() me: Actor, @Body() fields: object, @Res() reply: FastifyReply): Promise<void> {
    const form = readForm(fields);
    await answerForm(
      reply,
      async () => {
        const { id } = await this.people.create(me, await readInput(NewPersonDto, form));
        // A new account has no mail address yet, and the one who made it is there to give it.
        return `/people/${id}/mail`;
      },
      async (problem) => peoplePage({ me, people: await this.people.list(), form, problem }),
    );
  }

  @Roles('manager')
  @Post('people/:id')
  async change(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const form = readForm(fields);
    await answerForm(
      reply,
      async () => {
        // The form always sends roles: one without any is refused, and closes nobody's account by mistake.
        const input = await readInput(ChangePersonDto, {
          roles: [],
          ...form,
          active: form['active'] === 'true',
        });
        await this.people.change(me, id, input);
        return '/people';
      },
      async (problem: Problem) => peoplePage({ me, people: await this.people.list(), problem }),
    );
  }
}

/** Where to go after signing in: a path of ours, never another site. */
function safePath(then: string | undefined): string {
  return then && /^\/(?![/\\])/.test(then) ? then : '/';
}
