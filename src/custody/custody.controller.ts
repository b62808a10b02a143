import { Body, Controller, Get, Headers, HttpCode, Param, Post } from '@nestjs/common';
import { IdPipe } from '../http/id.pipe.js';
import { versionFrom } from '../http/version.js';
import { Me, Roles, SignedIn } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import {
  BookedItemView,
  BookingView,
  HandOutDto,
  ReleaseDto,
  ReservationView,
  ReturnDto,
} from './booking.dto.js';
import { BookingFlags } from './flags.service.js';
import { HandOuts } from './hand-outs.service.js';
import { Reservations } from './reservations.service.js';
import { Returns } from './returns.service.js';

@Controller('api')
export class CustodyController {
  constructor(
    private readonly reservations: Reservations,
    private readonly handOuts: HandOuts,
    private readonly returns: Returns,
    private readonly flags: BookingFlags,
  ) {}

  /** What the job has booked, and what of it is no longer fit or needed as of now. */
  @SignedIn()
  @Get('jobs/:id/booking')
  booking(@Param('id', IdPipe) id: number): Promise<BookingView> {
    return this.flags.booking(id);
  }

  /** Promises the proposed gear to the job. With If-Match, only if the job is still as it was read. */
  @Roles('storeman', 'manager')
  @Post('jobs/:id/reservation')
  reserve(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Headers('if-match') ifMatch: string | undefined,
  ): Promise<ReservationView> {
    return this.reservations.reserve(me, id, ifMatch === undefined ? {} : { version: versionFrom(ifMatch) });
  }

  /** Hands one item out, after asking again whether it is fit. */
  @Roles('storeman', 'manager')
  @Post('jobs/:id/hand-outs')
  handOut(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() input: HandOutDto,
  ): Promise<BookedItemView> {
    return this.handOuts.handOut(me, id, input);
  }

  /** Takes one item in again, or says that it did not come back. */
  @Roles('storeman', 'manager')
  @Post('jobs/:id/returns')
  bringBack(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() input: ReturnDto,
  ): Promise<BookedItemView> {
    return this.returns.bringBack(me, id, input);
  }

  /** Gives up one promise that was not handed out. */
  @Roles('storeman', 'manager')
  @Post('jobs/:id/releases')
  @HttpCode(204)
  release(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() { bookedItemId }: ReleaseDto,
  ): Promise<void> {
    return this.reservations.release(me, id, bookedItemId);
  }

  /** Says that a missing item turned up in its store. */
  @Roles('storeman', 'manager')
  @Post('items/:id/found')
  @HttpCode(204)
  found(@Me() me: Actor, @Param('id', IdPipe) id: number): Promise<void> {
    return this.returns.found(me, id);
  }
}
