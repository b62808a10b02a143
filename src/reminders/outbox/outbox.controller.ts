import { Controller, Get, HttpCode, Param, Post } from '@nestjs/common';
import { IdPipe } from '../../http/id.pipe.js';
import { Me, Roles } from '../../people/access.js';
import type { Actor } from '../../people/actor.js';
import { KeptMail } from './kept-mail.service.js';
import { OutboxView } from './outbox.dto.js';

@Controller('api/outbox')
export class OutboxController {
  constructor(private readonly mail: KeptMail) {}

  /** Mail that was given up, that waits, and that was sent lately. */
  @Roles('storeman', 'manager')
  @Get()
  list(): Promise<OutboxView> {
    return this.mail.list();
  }

  /** Sends a mail again that was given up. It keeps its Message-ID. */
  @Roles('manager')
  @Post(':id/resend')
  @HttpCode(204)
  resend(@Me() me: Actor, @Param('id', IdPipe) id: number): Promise<void> {
    return this.mail.resend(me, id);
  }
}
