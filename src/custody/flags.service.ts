import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { Catalogue } from '../catalogue/catalogue.js';
import { Clock } from '../clock.js';
import { jobLines } from '../jobs/job-lines.js';
import { loadJob, type Job } from '../jobs/load-job.js';
import { GearFacts } from '../planner/gear-facts.service.js';
import type { ChosenItem, HeldItem, PlannedLine } from '../planner/job-plan.js';
import { planInput } from '../planner/plan-input.js';
import { PlannerService } from '../planner/planner.service.js';
import type { Day } from '../rules/calendar/day.js';
import type { Gear } from '../rules/gear/gear.js';
import { Reads } from '../storage/reads.js';
import { asBookedItemView, bookedItems, type BookedItem } from './booked-items.js';
import type { BookingView } from './booking.dto.js';
import { checkBooking, flagCount, NOTHING_WRONG, type BookingCheck } from './check-booking.js';

/** How the booking of a job stands. */
export interface BookingStanding {
  readonly rows: readonly BookedItem[];
  readonly check: BookingCheck;
  /** Items that the job needs in all. */
  readonly needed: number;
}

/** Asks of booked gear, whenever anyone looks, whether it is still fit: nothing is remembered that could go stale. */
@Injectable()
export class BookingFlags {
  constructor(
    private readonly reads: Reads,
    private readonly planner: PlannerService,
    private readonly facts: GearFacts,
    private readonly catalogue: Catalogue,
    private readonly clock: Clock,
  ) {}

  /**
   * What a job has booked and what is wrong with it today, with replacements.
   * @throws Problem `not_found`.
   */
  async booking(jobId: number): Promise<BookingView> {
    const job = await loadJob(this.reads.manager, jobId);
    const standing = (await this.standings(this.reads.manager, [job])).get(jobId);
    const { rows = [], needed = 0, check = NOTHING_WRONG } = standing ?? {};
    const items = rows.map(asBookedItemView);
    if (flagCount(check) === 0 || job.cancelled)
      return { items, needed, unfit: [], surplus: [], shortLines: [] };
    const { plan } = await this.planner.proposeFor(this.reads.manager, job);
    return { items, needed, ...withReplacements(check, plan.lines) };
  }

  /** How the bookings of some jobs stand, from facts read through `manager`: inside a change, those of the change. */
  async standings(
    manager: EntityManager,
    jobs: readonly Job[],
  ): Promise<ReadonlyMap<number, BookingStanding>> {
    const rows = await bookedItems(
      manager,
      jobs.map(({ id }) => id),
    );
    const rowsOf = grouped(rows, ({ jobId }) => jobId);
    const standings = new Map<number, BookingStanding>();
    for (const [today, jobsToday] of grouped(jobs, ({ store }) => this.clock.today(store.timeZone))) {
      const itemIds = jobsToday.flatMap(({ id }) => (rowsOf.get(id) ?? []).map(({ itemId }) => itemId));
      const gear = new Map(
        (await this.facts.load(manager, { itemIds }, today)).map((item) => [item.itemId, item]),
      );
      for (const job of jobsToday)
        standings.set(job.id, this.standing(job, { rows: rowsOf.get(job.id) ?? [], gear, today }));
    }
    return standings;
  }

  private standing(
    job: Job,
    { rows, gear, today }: { rows: readonly BookedItem[]; gear: ReadonlyMap<number, Gear>; today: Day },
  ): BookingStanding {
    const result = jobLines(job, this.catalogue);
    if (!result.ok) return { rows, needed: 0, check: NOTHING_WRONG };
    const own = rows.flatMap(({ itemId }) => gear.get(itemId) ?? []);
    const input = planInput(job, {
      catalogue: this.catalogue,
      lines: result.lines,
      gear: own,
      held: rows.flatMap(asHeld),
      today,
    });
    return {
      rows,
      needed: result.lines.reduce((sum, { quantity }) => sum + quantity, 0),
      check: checkBooking(input, rows),
    };
  }
}

function grouped<Entry, Key>(entries: readonly Entry[], keyOf: (entry: Entry) => Key): Map<Key, Entry[]> {
  const groups = new Map<Key, Entry[]>();
  for (const entry of entries) groups.set(keyOf(entry), [...(groups.get(keyOf(entry)) ?? []), entry]);
  return groups;
}

function asHeld({ itemId, lineKey, state }: BookedItem): HeldItem[] {
  return state === 'released' ? [] : [{ itemId, lineKey, state }];
}

/** Hands the newly proposed items of each line to its unfit ones in their order, and the rest to what the line is short of. */
function withReplacements(
  { unfit, surplus, shortLines }: BookingCheck,
  lines: readonly PlannedLine[],
): Pick<BookingView, 'unfit' | 'surplus' | 'shortLines'> {
  const proposed = new Map(
    lines.map(({ line, chosen }) => [line.key, chosen.filter(({ held }) => !held).map(asReplacement)]),
  );
  return {
    unfit: unfit.map(({ row, lineLabel, refusals }) => {
      const replacement = proposed.get(row.lineKey)?.shift();
      return {
        item: asBookedItemView(row),
        lineLabel,
        refusals: [...refusals],
        ...(replacement && { replacement }),
      };
    }),
    surplus: surplus.map(asBookedItemView),
    shortLines: shortLines.map((line) => ({ ...line, proposed: proposed.get(line.lineKey) ?? [] })),
  };
}

function asReplacement({ itemId, tag, storeName }: ChosenItem): {
  itemId: number;
  tag: string;
  storeName: string;
} {
  return { itemId, tag, storeName };
}
