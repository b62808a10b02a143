import { Injectable } from '@nestjs/common';
import { Catalogue } from '../catalogue/catalogue.js';
import { requireLines } from '../jobs/job-lines.js';
import { loadJob, type Job } from '../jobs/load-job.js';
import { Clock } from '../clock.js';
import { GearFacts } from '../planner/gear-facts.service.js';
import { dueDates } from '../rules/due/due-date.js';
import type { IdleInspection } from '../rules/due/idle.js';
import type { MethodDefinition } from '../rules/lines/method.js';
import { Reads } from '../storage/reads.js';
import type { BookingView } from './booking.dto.js';
import { BookingFlags } from './flags.service.js';

/** What the pages at the store's counter show. */
export interface CounterSheet {
  readonly job: Job;
  readonly booking: BookingView;
  /** The labels of the gear lines by key. */
  readonly labels: ReadonlyMap<string, string>;
  /** What the crew confirms with its own eyes before the gear goes out. */
  readonly confirmations: MethodDefinition['confirmations'];
  /** What waits to go out and has lain idle for long, by item number. */
  readonly idle: ReadonlyMap<number, IdleInspection>;
}

/** Gathers what the pages at the store's counter show. */
@Injectable()
export class Counter {
  constructor(
    private readonly reads: Reads,
    private readonly flags: BookingFlags,
    private readonly catalogue: Catalogue,
    private readonly facts: GearFacts,
    private readonly clock: Clock,
  ) {}

  /** @throws Problem `not_found`. */
  async sheet(jobId: number): Promise<CounterSheet> {
    const job = await loadJob(this.reads.manager, jobId);
    const { lines } = requireLines(job, this.catalogue);
    const labels = new Map(lines.map(({ key, label }) => [key, label]));
    const { confirmations } = this.catalogue.method(job.method);
    const booking = await this.flags.booking(jobId);
    return { job, booking, labels, confirmations, idle: await this.idle(job, booking) };
  }

  private async idle(job: Job, { items }: BookingView): Promise<Map<number, IdleInspection>> {
    const today = this.clock.today(job.store.timeZone);
    const scheme = this.catalogue.scheme(job.scheme);
    const itemIds = items.filter(({ state }) => state === 'reserved').map(({ itemId }) => itemId);
    const gear = await this.facts.load(this.reads.manager, { itemIds }, today);
    return new Map(
      gear.flatMap((item) => {
        const idle = dueDates(item, scheme, today).inspections.find((due) => due.idle !== undefined)?.idle;
        return idle === undefined ? [] : [[item.itemId, idle] as const];
      }),
    );
  }
}
