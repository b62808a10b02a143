import { Injectable } from '@nestjs/common';
import { refuseStale } from '../http/version.js';
import { keepSheet } from '../jobs/calculation/kept-sheets.js';
import { loadJob, windowOf, type Job } from '../jobs/load-job.js';
import { Ledger, type Change } from '../ledger/ledger.service.js';
import type { Actor } from '../people/actor.js';
import { GearFacts } from '../planner/gear-facts.service.js';
import { judge } from '../planner/judge-gear.js';
import { planInput } from '../planner/plan-input.js';
import { PlannerService, type Proposal } from '../planner/planner.service.js';
import { Problem } from '../problem.js';
import { Catalogue } from '../catalogue/catalogue.js';
import { isRaisedByTrigger } from '../storage/engine-errors.js';
import { BookedItemEntity } from './booked-item.entity.js';
import { bookedItems, type BookedItem } from './booked-items.js';
import type { ReservationView } from './booking.dto.js';
import { Taken } from './taken.js';

const MOST_TRIES = 4;
const ROWS_AT_A_TIME = 50;

/** What brings a job's booking in line with its proposal. */
interface Difference {
  readonly add: readonly { readonly itemId: number; readonly tag: string; readonly lineKey: string }[];
  readonly release: readonly BookedItem[];
}

/** Promises gear to jobs, and gives promises up. */
@Injectable()
export class Reservations {
  constructor(
    private readonly ledger: Ledger,
    private readonly planner: PlannerService,
    private readonly facts: GearFacts,
    private readonly catalogue: Catalogue,
  ) {}

  /**
   * Promises the proposed gear to the job, and gives up what is reserved but unfit or no longer needed. The proposal is
   * made outside of the change, so that others need not wait for it; inside, each item is locked and asked again. What
   * was taken meanwhile leads to a new proposal, a few times.
   * @throws Problem `not_found`, `changed_meanwhile`, `nothing_to_reserve`, `item_taken`, `not_allowed_now`.
   */
  async reserve(
    actor: Actor,
    jobId: number,
    read: { readonly version?: number | undefined } = {},
  ): Promise<ReservationView> {
    let taken: Taken | undefined;
    for (let tries = 1; tries <= MOST_TRIES; tries += 1) {
      const proposal = await this.planner.propose(jobId);
      try {
        return await this.ledger.change(actor, (change) => this.book(change, { proposal, read, taken }));
      } catch (error) {
        if (!(error instanceof Taken)) throw error;
        taken = error;
      }
    }
    throw itemTaken(taken?.tags ?? []);
  }

  /**
   * Gives up one promise that has not been handed out.
   * @throws Problem `not_found`, `not_allowed_now`.
   */
  async release(actor: Actor, jobId: number, bookedItemId: number): Promise<void> {
    await this.ledger.change(actor, async (change) => {
      await change.lock('job', [jobId]);
      const job = await loadJob(change.manager, jobId);
      const row = (await bookedItems(change.manager, [jobId])).find(({ id }) => id === bookedItemId);
      if (!row)
        throw new Problem(
          'not_found',
          `Job ${job.reference} has no booked item with the number ${bookedItemId}.`,
        );
      if (row.state !== 'reserved') {
        throw new Problem(
          'not_allowed_now',
          `${row.tag} is ${row.state}, so its promise cannot be given up. Bring it back instead.`,
        );
      }
      await releaseRows(change, job, [row]);
    });
  }

  private async book(
    change: Change,
    {
      proposal,
      read,
      taken,
    }: { proposal: Proposal; read: { readonly version?: number | undefined }; taken: Taken | undefined },
  ): Promise<ReservationView> {
    await change.lock('job', [proposal.job.id]);
    const job = await loadJob(change.manager, proposal.job.id);
    if (read.version !== undefined)
      refuseStale(`Job ${job.reference}`, { read: read.version, now: job.version });
    if (job.cancelled) throw new Problem('not_allowed_now', `Job ${job.reference} is cancelled.`);
    if (job.version !== proposal.job.version) throw new Taken([]);
    const rows = await bookedItems(change.manager, [job.id]);
    const { add, release } = difference(proposal, rows);
    if (add.length === 0 && release.length === 0) {
      throw taken && taken.tags.length > 0 ? itemTaken(taken.tags) : nothingToReserve(job);
    }
    await change.lock(
      'item',
      [...add, ...release].map(({ itemId }) => itemId),
    );
    await releaseRows(change, job, release);
    await this.askAgain(change, job, { add, proposal });
    await this.insertRows(change, job, add);
    await keepSheet(change, job, this.catalogue);
    const missing = proposal.plan.lines.reduce((sum, line) => sum + line.missing, 0);
    const detail = { reserved: add.length, released: release.length, missing };
    change.note({ action: 'booking.reserved', subjectKind: 'job', subjectId: job.id, detail });
    return { reserved: add.map(({ tag }) => tag), released: release.map(({ tag }) => tag), missing };
  }

  /** @throws Taken when an item is not fit any more. */
  private async askAgain(
    change: Change,
    job: Job,
    { add, proposal }: { add: Difference['add']; proposal: Proposal },
  ): Promise<void> {
    const { today } = proposal;
    const gear = await this.facts.load(change.manager, { itemIds: add.map(({ itemId }) => itemId) }, today);
    const lines = proposal.plan.lines.map(({ line }) => line);
    const input = planInput(job, { catalogue: this.catalogue, lines, gear, held: [], today });
    const unfit = add.filter(({ itemId, lineKey }) => {
      const item = gear.find((entry) => entry.itemId === itemId);
      const line = lines.find(({ key }) => key === lineKey);
      return !item || !line || !judge(item, line, input).fit;
    });
    if (unfit.length > 0) throw new Taken(unfit.map(({ tag }) => tag));
  }

  private async insertRows(change: Change, job: Job, add: Difference['add']): Promise<void> {
    const { from, to } = windowOf(job);
    const promise = {
      jobId: job.id,
      fromDay: from,
      toDay: to,
      state: 'reserved' as const,
      reservedAt: change.at,
      version: 1,
    };
    const rows = add.map(({ itemId, lineKey }) => ({ ...promise, itemId, lineKey }));
    try {
      for (let start = 0; start < rows.length; start += ROWS_AT_A_TIME) {
        await change.manager.insert(BookedItemEntity, rows.slice(start, start + ROWS_AT_A_TIME));
      }
    } catch (error) {
      if (isRaisedByTrigger(error, 'double_booking')) throw new Taken(add.map(({ tag }) => tag));
      throw error;
    }
    for (const { itemId, lineKey } of add) {
      const detail = { job: job.reference, line: lineKey, from, to };
      change.note({ action: 'item.reserved', subjectKind: 'item', subjectId: itemId, detail });
    }
  }
}

/** Gives promises up inside a change. */
export async function releaseRows(
  change: Change,
  job: Pick<Job, 'reference'>,
  rows: readonly BookedItem[],
): Promise<void> {
  for (const { id, itemId, lineKey, version } of rows) {
    await change.manager.update(
      BookedItemEntity,
      { id },
      { state: 'released', settledAt: change.at, version: version + 1 },
    );
    const detail = { job: job.reference, line: lineKey };
    change.note({ action: 'item.unreserved', subjectKind: 'item', subjectId: itemId, detail });
  }
}

function difference({ plan }: Proposal, rows: readonly BookedItem[]): Difference {
  const wanted = plan.lines.flatMap(({ line, chosen }) =>
    chosen.map(({ itemId, tag }) => ({ itemId, tag, lineKey: line.key })),
  );
  const live = rows.filter(({ state }) => state === 'reserved' || state === 'out');
  const isIn = (
    list: readonly { itemId: number; lineKey: string }[],
    entry: { itemId: number; lineKey: string },
  ) => list.some(({ itemId, lineKey }) => itemId === entry.itemId && lineKey === entry.lineKey);
  return {
    add: wanted.filter((entry) => !isIn(live, entry)),
    release: live.filter((row) => row.state === 'reserved' && !isIn(wanted, row)),
  };
}

function nothingToReserve({ reference }: Job): Problem {
  return new Problem('nothing_to_reserve', `Job ${reference} has all the fit gear there is.`);
}

function itemTaken(tags: readonly string[]): Problem {
  const detail =
    tags.length > 0
      ? `No longer to be had: ${tags.join(', ')}.`
      : 'The job kept changing while it was reserved.';
  return new Problem('item_taken', detail, { members: { tags } });
}
