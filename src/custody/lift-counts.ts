import { In, type EntityManager } from 'typeorm';
import { toDay, type Day } from '../rules/calendar/day.js';
import { LiftCountEntity } from './lift-count.entity.js';

/** The lifts that the gear of a job made on a day, as last counted. */
export interface CountedDay {
  readonly jobId: number;
  readonly onDay: Day;
  readonly lifts: number;
  readonly recordedBy: number | null;
  readonly recordedAt: string;
}

/** The lifts of some jobs by day, in the order of the days; of two counts of a day the later one. */
export async function countedLifts(manager: EntityManager, jobIds: readonly number[]): Promise<CountedDay[]> {
  if (jobIds.length === 0) return [];
  const rows = await manager.find(LiftCountEntity, {
    where: { jobId: In([...jobIds]) },
    order: { onDay: 'ASC', id: 'ASC' },
  });
  const latest = new Map(rows.map((row) => [`${row.jobId} ${row.onDay}`, row]));
  return [...latest.values()].map(({ jobId, onDay, lifts, recordedBy, recordedAt }) => ({
    jobId,
    onDay: toDay(onDay),
    lifts,
    recordedBy,
    recordedAt,
  }));
}
