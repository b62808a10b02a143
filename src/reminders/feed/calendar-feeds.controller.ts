import { Body, Controller, Get, HttpCode, Param, Post, Req, Res } from '@nestjs/common';
import { ApiCreatedResponse } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { IdPipe } from '../../http/id.pipe.js';
import { Me, Roles } from '../../people/access.js';
import type { Actor } from '../../people/actor.js';
import { CalendarFeedView, NewCalendarFeedDto, NewCalendarFeedView } from './calendar-feeds.dto.js';
import { CalendarFeeds } from './calendar-feeds.service.js';
import { FeedAddress } from './feed-address.service.js';

@Controller('api/calendar-feeds')
export class CalendarFeedsController {
  constructor(
    private readonly feeds: CalendarFeeds,
    private readonly addresses: FeedAddress,
  ) {}

  /** One's own open calendar feeds, the newest first; to a manager everyone's. */
  @Roles('storeman', 'competentPerson', 'manager')
  @Get()
  list(@Me() me: Actor): Promise<CalendarFeedView[]> {
    return this.feeds.list(me);
  }

  /**
   * Makes a calendar feed of one's own. The answer holds its address, this once: sent again with the same
   * Idempotency-Key, the answer is empty, because the address is kept nowhere.
   */
  @Roles('storeman', 'competentPerson', 'manager')
  @Post()
  @ApiCreatedResponse({ type: NewCalendarFeedView })
  async make(
    @Me() me: Actor,
    @Body() input: NewCalendarFeedDto,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const { id, storeId, secret } = await this.feeds.make(me, input);
    const view: NewCalendarFeedView = { id, storeId, address: this.addresses.of(request, secret) };
    // Sent past the keeper of answers, which would write the secret down.
    await reply
      .status(201)
      .header('location', '/api/calendar-feeds')
      .header('cache-control', 'no-store')
      .send(view);
  }

  /** Takes the address of a feed away for good: one's own, or for a manager anybody's. */
  @Roles('storeman', 'competentPerson', 'manager')
  @Post(':id/revocation')
  @HttpCode(204)
  revoke(@Me() me: Actor, @Param('id', IdPipe) id: number): Promise<void> {
    return this.feeds.revoke(me, id);
  }
}
