import { Controller, Param, Post, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { IdPipe } from '../http/id.pipe.js';
import { Me, Roles } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import { NoticesService } from './notices.service.js';

/** The button of a notice on the start page. */
@Controller('notices')
export class NoticePages {
  constructor(private readonly notices: NoticesService) {}

  @Roles('storeman', 'manager')
  @Post(':id/settle')
  async settle(@Me() me: Actor, @Param('id', IdPipe) id: number, @Res() reply: FastifyReply): Promise<void> {
    await this.notices.settle(me, id);
    await reply.redirect('/', 303);
  }
}
