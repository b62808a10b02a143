import { Injectable } from '@nestjs/common';
import { Catalogue } from '../catalogue/catalogue.js';
import { Clock } from '../clock.js';
import { badInput } from '../http/input.js';
import { loadJob, type Job } from '../jobs/load-job.js';
import { Ledger, type Change } from '../ledger/ledger.service.js';
import type { Actor } from '../people/actor.js';
import { GearFacts } from '../planner/gear-facts.service.js';
import { Problem } from '../problem.js';
import { toDay, type Day } from '../rules/calendar/day.js';
import { dueDates } from '../rules/due/due-date.js';
import type { Gear } from '../rules/gear/gear.js';
import { Reads } from '../storage/reads.js';
import { CommitmentsService } from './commitments.service.js';
import { countedLifts } from './lift-counts.js';
import { LiftCountEntity } from './lift-count.entity.js';
import type { JobLiftsView, LiftsDto } from './site-use.dto.js';
import { staysOnJob, wasOutOn, type Stay } from './stays.js';

/** The lifts that the gear of a job makes, day by day. */
@Injectable()
export class Lifts {
  constructor(
    private readonly ledger: Ledger,
    private readonly reads: Reads,
    private readonly facts: GearFacts,
    private readonly commitments: CommitmentsService,
    private readonly catalogue: Catalogue,
    private readonly clock: Clock,
  ) {}

  /** The lifts of a job, by day as last counted. @throws Problem `not_found`. */
  async ofJob(jobId: number): Promise<JobLiftsView> {
    await loadJob(this.reads.manager, jobId);
    const days = await countedLifts(this.reads.manager, [jobId]);
    return {
      days: days.map(({ onDay, lifts, recordedAt }) => ({ onDay, lifts, recordedAt })),
      total: days.reduce((sum, { lifts }) => sum + lifts, 0),
    };
  }

  /**
   * Says how many lifts the job made on a day, and flags the jobs that count on gear which has now made all it is
   * allowed before an inspection.
   * @throws Problem `not_found`, `bad_input`, `not_allowed_now` while nothing of the job has gone out.
   */
  async count(actor: Actor, jobId: number, { onDay, lifts }: LiftsDto): Promise<JobLiftsView> {
    await this.ledger.change(actor, async (change) => {
      await change.lock('job', [jobId]);
      const job = await loadJob(change.manager, jobId);
      const today = this.clock.today(job.store.timeZone);
      const stays = await staysOnJob(change.manager, jobId, this.clock);
      refuseOtherDays(job, { onDay: toDay(onDay), stays, today });
      const itemIds = stays.map(({ itemId }) => itemId);
      if (itemIds.length === 0) {
        throw new Problem(
          'not_allowed_now',
          `Nothing of job ${job.reference} has gone out, so nothing lifted.`,
        );
      }
      const before = await this.facts.load(change.manager, { itemIds }, today);
      const count = { jobId, onDay, lifts, recordedBy: change.actor.id, recordedAt: change.at };
      await change.manager.insert(LiftCountEntity, count);
      change.note({
        action: 'lifts.counted',
        subjectKind: 'job',
        subjectId: jobId,
        detail: { job: job.reference, onDay, lifts },
      });
      await this.flagUsedUp(change, { job, before, today });
    });
    return this.ofJob(jobId);
  }

  private async flagUsedUp(
    change: Change,
    { job, before, today }: { job: Job; before: readonly Gear[]; today: Day },
  ): Promise<void> {
    const scheme = this.catalogue.scheme(job.scheme);
    const isUsedUp = (gear: Gear) =>
      dueDates(gear, scheme, today).inspections.some(({ lifts }) => lifts?.usedUpOn !== undefined);
    const known = new Set(before.filter(isUsedUp).map(({ itemId }) => itemId));
    const itemIds = before.map(({ itemId }) => itemId);
    for (const gear of await this.facts.load(change.manager, { itemIds }, today)) {
      if (known.has(gear.itemId) || !isUsedUp(gear)) continue;
      const item = { id: gear.itemId, tag: gear.tag };
      await this.commitments.flag(change, item, { because: 'lifts.counted', today });
    }
  }
}

/** The days of the job have lifts, and each later one on which gear that is late was still out. */
function refuseOtherDays(
  { reference, cancelled, loadOutDay, backDay }: Job,
  { onDay, stays, today }: { onDay: Day; stays: readonly Stay[]; today: Day },
): void {
  const field = 'onDay';
  if (cancelled) throw new Problem('not_allowed_now', `Job ${reference} is cancelled.`);
  if (onDay > today) throw badInput([{ field, message: `is in the future: today is ${today} at the store` }]);
  const wasOut = stays.some((stay) => stay.state !== 'missing' && wasOutOn(stay, onDay));
  if ((onDay < loadOutDay || onDay > backDay) && !wasOut)
    throw badInput([
      {
        field,
        message: `is not a day of the job, from ${loadOutDay} to ${backDay}, nor one on which its gear was out`,
      },
    ]);
}
