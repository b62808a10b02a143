import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { Change } from '../ledger/ledger.service.js';
import { queryItems, type GearFilter } from '../register/gear-filter.js';
import { toDay, type Day } from '../rules/calendar/day.js';
import type { Commitment } from '../rules/gear/gear.js';

interface Row {
  readonly item_id: number;
  readonly job_id: number;
  readonly reference: string;
  readonly from_day: string;
  readonly to_day: string;
  readonly state: 'reserved' | 'out' | 'back';
}

/** A promise that has not been kept yet; `out` says that the item is on the job. */
export interface OpenCommitment extends Commitment {
  readonly out: boolean;
}

/** A job that an item is promised to and that a change of the item concerns. */
export interface AffectedJob {
  readonly jobId: number;
  readonly reference: string;
  readonly from: Day;
  readonly to: Day;
}

/** Gives the promises of items to jobs that still count on a day. */
@Injectable()
export class CommitmentsService {
  /**
   * The commitments by item number: what is out, whenever it was to come back, and what is promised through `today`
   * or later. An item that came back today keeps its promise of today.
   */
  async load(
    manager: EntityManager,
    filter: GearFilter,
    today: Day,
  ): Promise<ReadonlyMap<number, Commitment[]>> {
    return byItem(await commitmentRows(manager, filter, today), (row) => asCommitment(row, today));
  }

  /** The promises by item number that have not been kept yet: reserved through today or later, or out. */
  async open(
    manager: EntityManager,
    filter: GearFilter,
    today: Day,
  ): Promise<ReadonlyMap<number, OpenCommitment[]>> {
    const rows = (await commitmentRows(manager, filter, today)).filter(({ state }) => state !== 'back');
    return byItem(rows, (row) => ({ ...asCommitment(row, today), out: row.state === 'out' }));
  }

  /**
   * Flags the jobs an item is promised to, in the same change that makes it unfit for them: a line of history each.
   * With `fitThrough`, only the jobs that need it later than that day. Gives the jobs.
   */
  async flag(
    change: Change,
    item: { readonly id: number; readonly tag: string },
    why: { readonly because: string; readonly today: Day; readonly fitThrough?: Day },
  ): Promise<AffectedJob[]> {
    const open = (await this.open(change.manager, { itemIds: [item.id] }, why.today)).get(item.id) ?? [];
    const { fitThrough } = why;
    const affected = open.filter(({ to, late }) => fitThrough === undefined || late || to > fitThrough);
    return affected.map(({ jobId, jobReference, from, to }) => {
      const detail = { itemId: item.id, tag: item.tag, because: why.because, from, to };
      change.note({ action: 'booking.flagged', subjectKind: 'job', subjectId: jobId, detail });
      return { jobId, reference: jobReference, from, to };
    });
  }
}

function commitmentRows(manager: EntityManager, filter: GearFilter, today: Day): Promise<Row[]> {
  return queryItems<Row>(manager, filter, (condition, next) => ({
    sql: `SELECT booked_item.item_id, booked_item.job_id, job.reference,
        CAST(booked_item.from_day AS varchar(10)) AS from_day, CAST(booked_item.to_day AS varchar(10)) AS to_day,
        booked_item.state
      FROM item JOIN booked_item ON booked_item.item_id = item.id JOIN job ON job.id = booked_item.job_id
      WHERE ${condition} AND (booked_item.state = 'out'
        OR booked_item.state IN ('reserved', 'back') AND booked_item.to_day >= $${next})
      ORDER BY booked_item.item_id, booked_item.from_day, booked_item.id`,
    more: [today],
  }));
}

function byItem<T>(rows: readonly Row[], asEntry: (row: Row) => T): Map<number, T[]> {
  const entries = new Map<number, T[]>();
  for (const row of rows) {
    const list = entries.get(row.item_id);
    if (list) list.push(asEntry(row));
    else entries.set(row.item_id, [asEntry(row)]);
  }
  return entries;
}

function asCommitment(row: Row, today: Day): Commitment {
  const to = toDay(row.to_day);
  return {
    jobId: row.job_id,
    jobReference: row.reference,
    from: toDay(row.from_day),
    to,
    late: row.state === 'out' && to < today,
  };
}
