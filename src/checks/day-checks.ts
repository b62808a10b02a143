import type { EntityManager } from 'typeorm';
import type { Day } from '../rules/calendar/day.js';
import { PreUseCheckEntity } from './pre-use-check.entity.js';

/** A check of a day, as the coverage sees it. */
export interface DayCheck {
  readonly inspectionId: number;
  readonly itemId: number;
  readonly jobId: number | null;
  readonly outcome: 'fit' | 'unfit';
  readonly checkedAt: string;
  readonly checkedBy: string;
  readonly clockDoubtful: boolean;
}

/**
 * The checks of a day that count for a job, in the order in which they were recorded: those made on it, and those of
 * its items that were made for no job. A check for another job says nothing of this one.
 */
export async function checksOfDay(
  manager: EntityManager,
  { jobId, itemIds, day }: { jobId: number; itemIds: readonly number[]; day: Day },
): Promise<DayCheck[]> {
  const rows = await manager
    .createQueryBuilder(PreUseCheckEntity, 'made')
    .innerJoin('made.inspection', 'inspection')
    .addSelect(['inspection.id', 'inspection.outcome', 'inspection.doneBy'])
    .where('made.checkedOn = :day', { day })
    .andWhere('(made.jobId = :jobId OR made.jobId IS NULL)', { jobId })
    .orderBy('made.id')
    .getMany();
  const wanted = new Set(itemIds);
  return rows.flatMap(({ inspection, inspectionId, itemId, jobId: madeOn, checkedAt, clockDoubtful }) => {
    if (!inspection || (madeOn === null && !wanted.has(itemId))) return [];
    const { outcome, doneBy: checkedBy } = inspection;
    return [{ inspectionId, itemId, jobId: madeOn, outcome, checkedAt, checkedBy, clockDoubtful }];
  });
}
