import { Injectable } from '@nestjs/common';
import { Catalogue } from '../../catalogue/catalogue.js';
import { NOTHING_WRONG, type BookingCheck } from '../../custody/check-booking.js';
import { BookingFlags } from '../../custody/flags.service.js';
import { jobLines } from '../../jobs/job-lines.js';
import type { ChangeJobDto } from '../../jobs/jobs.dto.js';
import { JobsService } from '../../jobs/jobs.service.js';
import type { Job } from '../../jobs/load-job.js';
import type { Day } from '../../rules/calendar/day.js';
import { Reads } from '../../storage/reads.js';
import { GearFacts } from '../gear-facts.service.js';
import type { PlannedLine } from '../job-plan.js';
import { judge } from '../judge-gear.js';
import { planInput } from '../plan-input.js';
import { PlannerService, type Proposal } from '../planner.service.js';
import { compareBookings, type BookingDifference } from './compare-bookings.js';
import { compareItems, leavingItemIds, type ItemDifference, type RefusalsOf } from './compare-items.js';
import { compareLines, type LineDifference } from './compare-lines.js';

/** What a change of a job would do to its gear. */
export interface WhatIf {
  readonly jobId: number;
  readonly jobVersion: number;
  /** The day it was worked out on, at the store of the changed job. */
  readonly today: Day;
  /** True when the lines, the items chosen and the booking stay as they are. */
  readonly nothingChanges: boolean;
  readonly lines: readonly LineDifference[];
  readonly items: readonly ItemDifference[];
  readonly booking: BookingDifference;
}

/**
 * Says what a change of a job would do before it is made. Writes nothing. Other jobs are left out because no change
 * of this one can take from them: what they hold is refused to it, and days on which its own gear is promised to
 * them are refused as a whole.
 */
@Injectable()
export class WhatIfService {
  constructor(
    private readonly jobs: JobsService,
    private readonly planner: PlannerService,
    private readonly flags: BookingFlags,
    private readonly facts: GearFacts,
    private readonly catalogue: Catalogue,
    private readonly reads: Reads,
  ) {}

  /**
   * The differences between the job as it stands and as the change would leave it.
   * @throws Problem whatever `JobsService.edit` would throw of the same change.
   */
  async whatIf(id: number, change: { version: number; input: ChangeJobDto }): Promise<WhatIf> {
    const { now, next } = await this.jobs.preview(id, change);
    const before = await this.linesNow(now);
    const proposal = await this.planner.proposeFor(this.reads.manager, next);
    const after = proposal.plan.lines;
    const lines = compareLines(before, after);
    const refusalsOf = await this.refusalsAfter(proposal, leavingItemIds(before, after));
    const items = compareItems(before, after, refusalsOf);
    const booking = compareBookings(await this.check(now), await this.check(next));
    const found = lines.length + items.length + booking.unfit.length + booking.surplus.length;
    const about = { jobId: id, jobVersion: now.version, today: proposal.today };
    return { ...about, nothingChanges: found === 0, lines, items, booking };
  }

  /** The planned lines of the job as it stands: none when the catalogue changed so that they cannot be worked out. */
  private async linesNow(job: Job): Promise<readonly PlannedLine[]> {
    if (!jobLines(job, this.catalogue).ok) return [];
    return (await this.planner.proposeFor(this.reads.manager, job)).plan.lines;
  }

  private async check(job: Job): Promise<BookingCheck> {
    const standing = (await this.flags.standings(this.reads.manager, [job])).get(job.id);
    return standing?.check ?? NOTHING_WRONG;
  }

  private async refusalsAfter(
    { job, plan, today }: Proposal,
    itemIds: readonly number[],
  ): Promise<RefusalsOf> {
    if (itemIds.length === 0) return () => [];
    const gear = await this.facts.load(this.reads.manager, { itemIds }, today);
    const lines = plan.lines.map(({ line }) => line);
    const input = planInput(job, { catalogue: this.catalogue, lines, gear, held: [], today });
    const gearOf = new Map(gear.map((item) => [item.itemId, item]));
    return (itemId, line) => {
      const item = gearOf.get(itemId);
      return item ? judge(item, line, input).refusals : [];
    };
  }
}
