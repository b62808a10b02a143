import { Controller, Get, Inject, Param, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { answerPage } from '../../http/answer-form.js';
import { IdPipe } from '../../http/id.pipe.js';
import { Me, SignedIn } from '../../people/access.js';
import type { Actor } from '../../people/actor.js';
import { Problem } from '../../problem.js';
import { SETTINGS, type Settings } from '../../settings.js';
import { publicAddress } from '../public-address.js';
import { KeptMail, type WholeMail } from './kept-mail.service.js';
import { answerMailHtml } from './mail-frame.js';
import { mailPage } from './mail.view.js';
import { mailboxPage } from './mailbox.view.js';

/** The local mailbox of the demo. Elsewhere there is nothing at these addresses. */
@Controller('mailbox')
export class MailboxPages {
  constructor(
    private readonly mail: KeptMail,
    @Inject(SETTINGS) private readonly settings: Settings,
  ) {}

  @SignedIn()
  @Get()
  async list(@Me() me: Actor, @Res() reply: FastifyReply): Promise<void> {
    this.refuseOutsideTheDemo();
    const everyone = isManager(me);
    const pile = await this.mail.arrived(everyone ? undefined : (me.id ?? 0));
    await answerPage(reply, mailboxPage({ me, pile, everyone }));
  }

  @SignedIn()
  @Get(':id')
  async show(@Me() me: Actor, @Param('id', IdPipe) id: number, @Res() reply: FastifyReply): Promise<void> {
    const mail = await this.mailFor(me, id);
    await answerPage(reply, mailPage({ me, mail, from: 'mailbox', address: publicAddress(this.settings) }));
  }

  @SignedIn()
  @Get(':id/html')
  async html(@Me() me: Actor, @Param('id', IdPipe) id: number, @Res() reply: FastifyReply): Promise<void> {
    await answerMailHtml(reply, (await this.mailFor(me, id)).html);
  }

  /** A mail of one's own; a manager sees everyone's. Of anyone else's nothing is told, not even that it exists. */
  private async mailFor(me: Actor, id: number): Promise<WholeMail> {
    this.refuseOutsideTheDemo();
    const mail = await this.mail.whole(id);
    if (mail.state === 'sent' && (isManager(me) || mail.personId === me.id)) return mail;
    throw new Problem('not_found', `There is no mail with the number ${id}.`);
  }

  private refuseOutsideTheDemo(): void {
    if (!this.settings.demo) throw new Problem('not_found', 'Only the demo has a local mailbox.');
  }
}

function isManager({ roles }: Actor): boolean {
  return roles.includes('manager');
}
