import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import { IdPipe } from '../http/id.pipe.js';
import { Me, SignedIn } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import { toDay } from '../rules/calendar/day.js';
import { CheckOutcomeView, CoverageQueryDto, NewCheckDto } from './checks.dto.js';
import { ChecksService } from './checks.service.js';
import { CoverageView } from './coverage.dto.js';
import { CoverageService } from './coverage.service.js';

@Controller('api')
export class ChecksController {
  constructor(
    private readonly checks: ChecksService,
    private readonly coverage: CoverageService,
  ) {}

  /**
   * Records a check before use of the item. Every point is answered; a failed point leaves a defect, and an immediate
   * danger quarantines the item and tells its store. Send an Idempotency-Key so that a check sent twice counts once.
   */
  @SignedIn()
  @Post('items/:id/checks')
  record(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() input: NewCheckDto,
  ): Promise<CheckOutcomeView> {
    return this.checks.record(me, id, input);
  }

  /** How far the gear of the job is checked on a day, today when left out. Failed and unchecked items are named. */
  @SignedIn()
  @Get('jobs/:id/checks')
  ofJob(@Param('id', IdPipe) id: number, @Query() { day }: CoverageQueryDto): Promise<CoverageView> {
    return this.coverage.ofJob(id, day === undefined ? undefined : toDay(day));
  }
}
