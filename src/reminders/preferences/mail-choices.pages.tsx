import { Body, Controller, Get, Param, Post, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { answerForm, answerPage } from '../../http/answer-form.js';
import { IdPipe } from '../../http/id.pipe.js';
import { readForm } from '../../http/input.js';
import { Me, Roles, SignedIn } from '../../people/access.js';
import type { Actor } from '../../people/actor.js';
import { StoresService } from '../../stores/stores.service.js';
import { readChoiceForm } from './mail-choice-form.js';
import { mailChoicePage, type TypedChoice } from './mail-choices.view.js';
import { MailChoices } from './mail-choices.service.js';
import { mailOverviewPage } from './mail-overview.view.js';
import { MailWarnings } from './mail-warnings.service.js';

/** The pages on which people, and managers for others, choose what they hear by mail. */
@Controller()
export class MailChoicesPages {
  constructor(
    private readonly choices: MailChoices,
    private readonly warnings: MailWarnings,
    private readonly stores: StoresService,
  ) {}

  @SignedIn()
  @Get('me/mail')
  async showOwn(@Me() me: Actor, @Res() reply: FastifyReply): Promise<void> {
    await answerPage(reply, await this.page(me, ownId(me)));
  }

  @SignedIn()
  @Post('me/mail')
  async changeOwn(@Me() me: Actor, @Body() fields: object, @Res() reply: FastifyReply): Promise<void> {
    await this.answer(me, ownId(me), { fields, reply });
  }

  @Roles('manager')
  @Get('people/mail')
  async overview(@Me() me: Actor, @Res() reply: FastifyReply): Promise<void> {
    const [people, stores] = [await this.choices.people(), await this.stores.list()];
    await answerPage(reply, mailOverviewPage({ me, people, stores, warnings: await this.warnings.list() }));
  }

  @Roles('manager')
  @Get('people/:id/mail')
  async show(@Me() me: Actor, @Param('id', IdPipe) id: number, @Res() reply: FastifyReply): Promise<void> {
    await answerPage(reply, await this.page(me, id));
  }

  @Roles('manager')
  @Post('people/:id/mail')
  async change(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    await this.answer(me, id, { fields, reply });
  }

  private async answer(
    me: Actor,
    personId: number,
    { fields, reply }: { fields: object; reply: FastifyReply },
  ): Promise<void> {
    const form = readForm(fields);
    await answerForm(
      reply,
      async () => {
        await this.choices.change(me, personId, await readChoiceForm(form));
        return me.id === personId ? '/me/mail' : `/people/${personId}/mail`;
      },
      (problem) => this.page(me, personId, { form, problem }),
    );
  }

  private async page(me: Actor, personId: number, typed?: TypedChoice): Promise<string> {
    const [person, stores] = [await this.choices.of(me, personId), await this.stores.list()];
    return mailChoicePage({ me, person, stores, warnings: await this.warnings.list(), ...typed });
  }
}

/** Whoever is signed in has an account; only Tackleroom itself has none. */
function ownId({ id }: Actor): number {
  if (id === null) throw new Error('Tackleroom itself has no page.');
  return id;
}
