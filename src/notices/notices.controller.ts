import { Controller, Get, HttpCode, Param, Post } from '@nestjs/common';
import { IdPipe } from '../http/id.pipe.js';
import { Me, Roles } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import { NoticeView } from './notices.dto.js';
import { NoticesService } from './notices.service.js';

@Controller('api/notices')
export class NoticesController {
  constructor(private readonly notices: NoticesService) {}

  /** What storeman and manager must hear at once, newest first: gear in which a danger was found, and batches out of service. */
  @Roles('storeman', 'manager')
  @Get()
  open(): Promise<NoticeView[]> {
    return this.notices.open();
  }

  /** Says that the notice was dealt with. The gear stays as it is; releasing or scrapping an item settles its notices too. */
  @Roles('storeman', 'manager')
  @Post(':id/settled')
  @HttpCode(204)
  settle(@Me() me: Actor, @Param('id', IdPipe) id: number): Promise<void> {
    return this.notices.settle(me, id);
  }
}
