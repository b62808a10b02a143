import { In, type EntityManager } from 'typeorm';
import type { Clock } from '../clock.js';
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
  /** The day it came back, which for gear that was late lies past the days it was promised; absent while it has not. */
  readonly through?: Day;
  readonly state: 'out' | 'back' | 'missing';
  readonly handedOutAt: string | null;
  readonly settledAt: string | null;
  readonly returnRemarks: string | null;
}

const AWAY = ['out', 'back', 'missing'] as const;

/** Every time that an item was away, the first first. */
export async function staysOfItem(manager: EntityManager, itemId: number, clock: Clock): Promise<Stay[]> {
  return stays(manager, { itemId }, clock);
}

/** Everything that was out on a job, in the order it was booked. */
export async function staysOnJob(manager: EntityManager, jobId: number, clock: Clock): Promise<Stay[]> {
  return stays(manager, { jobId }, clock);
}

/**
 * The day an item that came back was last away. A booking ends with the days that were promised, so that it never
 * stands in the way of the next one; gear that came back later was away until then.
 */
export function lastDayAway(
  { toDay: promised, settledAt }: { readonly toDay: Day; readonly settledAt: string | null },
  timeZone: string,
  clock: Clock,
): Day {
  if (settledAt === null) return promised;
  const settledOn = clock.dayAt(settledAt, timeZone);
  return settledOn > promised ? settledOn : promised;
}

/** Whether a stay takes in a day. */
export function wasOutOn({ from, through }: Pick<Stay, 'from' | 'through'>, day: Day): boolean {
  return from <= day && (through === undefined || through >= day);
}

async function stays(
  manager: EntityManager,
  of: { itemId?: number; jobId?: number },
  clock: Clock,
): Promise<Stay[]> {
  const rows = await manager.find(BookedItemEntity, {
    where: { ...of, state: In([...AWAY]) },
    relations: { job: { store: true } },
    order: of.jobId === undefined ? { fromDay: 'ASC', id: 'ASC' } : { id: 'ASC' },
  });
  return rows.flatMap(({ job, state, ...row }) => {
    const away = AWAY.find((each) => each === state);
    if (!job?.store || !away) return [];
    const promised = { toDay: toDay(row.toDay), settledAt: row.settledAt };
    return [
      {
        itemId: row.itemId,
        jobId: job.id,
        jobReference: job.reference,
        jobName: job.name,
        site: job.site,
        lineKey: row.lineKey,
        from: toDay(row.fromDay),
        ...(away === 'back' ? { through: lastDayAway(promised, job.store.timeZone, clock) } : {}),
        state: away,
        handedOutAt: row.handedOutAt,
        settledAt: row.settledAt,
        returnRemarks: row.returnRemarks,
      },
    ];
  });
}
