import { Controller, Get, Inject, Param, Post, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { answerPage } from '../../http/answer-form.js';
import { IdPipe } from '../../http/id.pipe.js';
import { Me, Roles } from '../../people/access.js';
import type { Actor } from '../../people/actor.js';
import { SETTINGS, type Settings } from '../../settings.js';
import { publicAddress } from '../public-address.js';
import { KeptMail } from './kept-mail.service.js';
import { answerMailHtml } from './mail-frame.js';
import { mailPage } from './mail.view.js';
import { outboxPage } from './outbox.view.js';

@Controller('outbox')
export class OutboxPages {
  constructor(
    private readonly mail: KeptMail,
    @Inject(SETTINGS) private readonly settings: Settings,
  ) {}

  @Roles('storeman', 'manager')
  @Get()
  async list(@Me() me: Actor, @Res() reply: FastifyReply): Promise<void> {
    await answerPage(reply, outboxPage({ me, box: await this.mail.list(), demo: this.settings.demo }));
  }

  @Roles('storeman', 'manager')
  @Get(':id')
  async show(@Me() me: Actor, @Param('id', IdPipe) id: number, @Res() reply: FastifyReply): Promise<void> {
    const mail = await this.mail.whole(id);
    await answerPage(reply, mailPage({ me, mail, from: 'outbox', address: publicAddress(this.settings) }));
  }

  @Roles('storeman', 'manager')
  @Get(':id/html')
  async html(@Param('id', IdPipe) id: number, @Res() reply: FastifyReply): Promise<void> {
    await answerMailHtml(reply, (await this.mail.whole(id)).html);
  }

  @Roles('manager')
  @Post(':id/resend')
  async resend(@Me() me: Actor, @Param('id', IdPipe) id: number, @Res() reply: FastifyReply): Promise<void> {
    await this.mail.resend(me, id);
    await reply.redirect('/outbox', 303);
  }
}
