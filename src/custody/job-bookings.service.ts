import { Injectable } from '@nestjs/common';
import { In, LessThanOrEqual, MoreThanOrEqual, Not, type EntityManager } from 'typeorm';
import { windowOf, type Job } from '../jobs/load-job.js';
import type { Change } from '../ledger/ledger.service.js';
import { Problem } from '../problem.js';
import { isRaisedByTrigger } from '../storage/engine-errors.js';
import { BookedItemEntity } from './booked-item.entity.js';
import { bookedItems, isLive, type BookedItem } from './booked-items.js';
import { flagCount, type BookingCheck } from './check-booking.js';
import { BookingFlags } from './flags.service.js';
import { releaseRows } from './reservations.service.js';

/** Keeps a booking in step with its job, inside the change that edits or cancels the job. */
@Injectable()
export class JobBookings {
  constructor(private readonly flags: BookingFlags) {}

  /**
   * Moves the promises to the job's new days and notes what is no longer fit. Called after the job was updated.
   * @throws Problem `not_allowed_now` that names the items another job holds on a new day.
   */
  async follow(change: Change, job: Job, { windowMoved }: { windowMoved: boolean }): Promise<void> {
    if (windowMoved) await this.moveWindow(change, job);
    const check = (await this.flags.standings(change.manager, [job])).get(job.id)?.check;
    if (!check || flagCount(check) === 0) return;
    change.note({ action: 'booking.flagged', subjectKind: 'job', subjectId: job.id, detail: inShort(check) });
  }

  /**
   * Refuses new days as `follow` would. Moves nothing.
   * @throws Problem `not_allowed_now` that names the items another job holds on a new day.
   */
  async refuseMove(manager: EntityManager, job: Moved): Promise<void> {
    await refuseClashes(manager, job, (await bookedItems(manager, [job.id])).filter(isLive));
  }

  /**
   * Gives up everything that is reserved. Called as the job is cancelled.
   * @throws Problem `not_allowed_now` while gear is out.
   */
  async releaseAll(change: Change, job: Job): Promise<void> {
    const rows = await bookedItems(change.manager, [job.id]);
    const out = rows.filter(({ state }) => state === 'out');
    if (out.length > 0) {
      const tags = out.map(({ tag }) => tag).join(', ');
      throw new Problem('not_allowed_now', `Bring back what is out first: ${tags}.`);
    }
    await releaseRows(
      change,
      job,
      rows.filter(({ state }) => state === 'reserved'),
    );
  }

  private async moveWindow(change: Change, job: Job): Promise<void> {
    const rows = (await bookedItems(change.manager, [job.id])).filter(isLive);
    await change.lock(
      'item',
      rows.map(({ itemId }) => itemId),
    );
    await refuseClashes(change.manager, job, rows);
    const { from, to } = windowOf(job);
    for (const { id, itemId, state, fromDay, version } of rows) {
      const start = state === 'out' ? fromDay : from;
      const set = { fromDay: start, toDay: to < start ? start : to, version: version + 1 };
      await change.manager.update(BookedItemEntity, { id }, set).catch((error: unknown) => {
        if (!isRaisedByTrigger(error, 'double_booking')) throw error;
        throw new Problem(
          'not_allowed_now',
          'Booked gear was promised to another job on the new days a moment ago.',
        );
      });
      change.note({
        action: 'item.rebooked',
        subjectKind: 'item',
        subjectId: itemId,
        detail: { job: job.reference, from: set.fromDay, to },
      });
    }
  }
}

type Moved = Pick<Job, 'id' | 'loadOutDay' | 'backDay'>;

async function refuseClashes(manager: EntityManager, job: Moved, rows: readonly BookedItem[]): Promise<void> {
  if (rows.length === 0) return;
  const clashes = await manager.find(BookedItemEntity, {
    where: {
      itemId: In(rows.map(({ itemId }) => itemId)),
      jobId: Not(job.id),
      state: Not('released'),
      fromDay: LessThanOrEqual(job.backDay),
      toDay: MoreThanOrEqual(job.loadOutDay),
    },
    relations: { item: true, job: true },
    order: { id: 'ASC' },
  });
  if (clashes.length === 0) return;
  const named = clashes.map(
    ({ item, job: other, fromDay, toDay }) =>
      `${item?.tag} is promised to job ${other?.reference} from ${fromDay} to ${toDay}`,
  );
  const members = {
    clashes: clashes.map(({ itemId, item, job: other }) => ({
      itemId,
      tag: item?.tag,
      job: other?.reference,
    })),
  };
  throw new Problem(
    'not_allowed_now',
    `The booked gear is not free on the new days: ${named.join('; ')}. Release it or choose other days.`,
    { members },
  );
}

function inShort({ unfit, surplus, shortLines }: BookingCheck): object {
  return {
    unfit: unfit.map(({ row, refusals }) => ({
      itemId: row.itemId,
      codes: refusals.map(({ code }) => code),
    })),
    surplus: surplus.map(({ itemId }) => itemId),
    short: shortLines.map(({ lineKey, missing }) => ({ lineKey, missing })),
  };
}
