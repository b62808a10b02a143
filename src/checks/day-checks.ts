import { In, type EntityManager } from 'typeorm';
import type { Day } from '../rules/calendar/day.js';
import { PreUseCheckEntity } from './pre-use-check.entity.js';

/** A check of a day, as the coverage sees it. With a clock in doubt it was received on that day, and its faults stand. */
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
 * The checks of a day that belong to a job, in the order in which they were recorded: those made on it, and those of
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

/** Whether a check says anything of a day: one by a clock in doubt is no check of it, but a fault found stands. */
export function countsForDay({
  clockDoubtful,
  outcome,
}: Pick<DayCheck, 'clockDoubtful' | 'outcome'>): boolean {
  return !clockDoubtful || outcome === 'unfit';
}

/** The numbers of the inspections of some items that are checks by a clock in doubt. */
export async function checksInDoubt(
  manager: EntityManager,
  itemIds: readonly number[],
): Promise<ReadonlySet<number>> {
  const where = { itemId: In([...itemIds]), clockDoubtful: true };
  const rows = await manager.find(PreUseCheckEntity, { select: { inspectionId: true }, where });
  return new Set(rows.map(({ inspectionId }) => inspectionId));
}
