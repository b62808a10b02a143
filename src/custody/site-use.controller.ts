import { Body, Controller, Get, Param, Post } from '@nestjs/common';
import { IdPipe } from '../http/id.pipe.js';
import { Me, Roles, SignedIn } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import { Lifts } from './lifts.service.js';
import { Shocks } from './shocks.service.js';
import { JobEventDto, JobEventView, JobLiftsView, LiftsDto } from './site-use.dto.js';

@Controller('api/jobs/:id')
export class SiteUseController {
  constructor(
    private readonly lifts: Lifts,
    private readonly shocks: Shocks,
  ) {}

  /** The lifts of the job, by day as last counted. */
  @SignedIn()
  @Get('lifts')
  list(@Param('id', IdPipe) id: number): Promise<JobLiftsView> {
    return this.lifts.ofJob(id);
  }

  /** Says how many lifts the gear of the job made on a day. Each item that was out counts all of them. */
  @Roles('crew', 'storeman', 'manager')
  @Post('lifts')
  count(@Me() me: Actor, @Param('id', IdPipe) id: number, @Body() input: LiftsDto): Promise<JobLiftsView> {
    return this.lifts.count(me, id, input);
  }

  /** Records that the load or the gear was dropped or overloaded, for every item involved at once. */
  @SignedIn()
  @Post('events')
  recordShock(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() input: JobEventDto,
  ): Promise<JobEventView> {
    return this.shocks.record(me, id, input);
  }
}
