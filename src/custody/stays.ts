import { In, type EntityManager } from 'typeorm';
import { toDay, type Day } from '../rules/calendar/day.js';
import { BookedItemEntity } from './booked-item.entity.js';

/** A time that an item spent away on a job: it went out, and is back, still out, or did not come back. */
export interface Stay {
  readonly itemId: number;
  readonly jobId: number;
  readonly jobReference: string;
  readonly jobName: string;
  readonly site: string;
  readonly lineKey: string;
  readonly from: Day;
  /** The day it came back; absent while it has not. */
  readonly through?: Day;
  readonly state: 'out' | 'back' | 'missing';
  readonly handedOutAt: string | null;
  readonly settledAt: string | null;
  readonly returnRemarks: string | null;
}

const AWAY = ['out', 'back', 'missing'] as const;

/** Every time that an item was away, the first first. */
export async function staysOfItem(manager: EntityManager, itemId: number): Promise<Stay[]> {
  return stays(manager, { itemId });
}

/** Everything that was out on a job, in the order it was booked. */
export async function staysOnJob(manager: EntityManager, jobId: number): Promise<Stay[]> {
  return stays(manager, { jobId });
}

/** Whether a stay takes in a day. */
export function wasOutOn({ from, through }: Pick<Stay, 'from' | 'through'>, day: Day): boolean {
  return from <= day && (through === undefined || through >= day);
}

async function stays(manager: EntityManager, of: { itemId?: number; jobId?: number }): Promise<Stay[]> {
  const rows = await manager.find(BookedItemEntity, {
    where: { ...of, state: In([...AWAY]) },
    relations: { job: true },
    order: of.jobId === undefined ? { fromDay: 'ASC', id: 'ASC' } : { id: 'ASC' },
  });
  return rows.flatMap(({ job, state, ...row }) => {
    const away = AWAY.find((each) => each === state);
    if (!job || !away) return [];
    return [
      {
        itemId: row.itemId,
        jobId: job.id,
        jobReference: job.reference,
        jobName: job.name,
        site: job.site,
        lineKey: row.lineKey,
        from: toDay(row.fromDay),
        ...(away === 'back' ? { through: toDay(row.toDay) } : {}),
        state: away,
        handedOutAt: row.handedOutAt,
        settledAt: row.settledAt,
        returnRemarks: row.returnRemarks,
      },
    ];
  });
}
