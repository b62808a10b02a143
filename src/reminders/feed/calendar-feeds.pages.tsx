import { Body, Controller, Get, Param, Post, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { answerForm, answerPage } from '../../http/answer-form.js';
import { IdPipe } from '../../http/id.pipe.js';
import { readForm, readInput } from '../../http/input.js';
import { Me, Roles } from '../../people/access.js';
import type { Actor } from '../../people/actor.js';
import type { Problem } from '../../problem.js';
import { StoresService } from '../../stores/stores.service.js';
import { NewCalendarFeedDto } from './calendar-feeds.dto.js';
import { CalendarFeeds } from './calendar-feeds.service.js';
import { calendarFeedsPage } from './calendar-feeds.view.js';
import { FeedAddress } from './feed-address.service.js';
import { secretIn } from './feed-secret.js';
import { carrySecret, takeSecret } from './made-feed-cookie.js';

/** The page on which people make, see and revoke the addresses that their calendars read. */
@Controller('calendar')
export class CalendarFeedsPages {
  constructor(
    private readonly feeds: CalendarFeeds,
    private readonly stores: StoresService,
    private readonly addresses: FeedAddress,
  ) {}

  @Roles('storeman', 'competentPerson', 'manager')
  @Get()
  async show(@Me() me: Actor, @Req() request: FastifyRequest, @Res() reply: FastifyReply): Promise<void> {
    const carried = takeSecret(request, reply);
    const secret = carried === undefined ? undefined : secretIn(`${carried}.ics`);
    const made = secret === undefined ? {} : { address: this.addresses.of(request, secret) };
    reply.header('cache-control', 'no-store');
    await answerPage(reply, await this.page(me, made));
  }

  @Roles('storeman', 'competentPerson', 'manager')
  @Post()
  async make(@Me() me: Actor, @Body() fields: object, @Res() reply: FastifyReply): Promise<void> {
    await answerForm(
      reply,
      async () => {
        const { secret } = await this.feeds.make(me, await readInput(NewCalendarFeedDto, readForm(fields)));
        carrySecret(reply, secret);
        return '/calendar';
      },
      (problem) => this.page(me, { problem }),
    );
  }

  @Roles('storeman', 'competentPerson', 'manager')
  @Post(':id/revoke')
  async revoke(@Me() me: Actor, @Param('id', IdPipe) id: number, @Res() reply: FastifyReply): Promise<void> {
    await answerForm(
      reply,
      async () => {
        await this.feeds.revoke(me, id);
        return '/calendar';
      },
      (problem) => this.page(me, { problem }),
    );
  }

  private async page(me: Actor, shown: { address?: string; problem?: Problem }): Promise<string> {
    const [feeds, stores] = [await this.feeds.list(me), await this.stores.list()];
    return calendarFeedsPage({ me, feeds, stores, ...shown });
  }
}
