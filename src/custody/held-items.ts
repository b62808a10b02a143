import { Not, type EntityManager } from 'typeorm';
import { BookedItemEntity } from './booked-item.entity.js';
import type { HeldItem } from '../planner/job-plan.js';

/** What a job has booked, is out with or had back, by the order it was booked in. Released promises are left out. */
export async function heldItems(manager: EntityManager, jobId: number): Promise<HeldItem[]> {
  const rows = await manager.find(BookedItemEntity, {
    select: { id: true, itemId: true, lineKey: true, state: true },
    where: { jobId, state: Not('released') },
    order: { id: 'ASC' },
  });
  return rows.flatMap(({ itemId, lineKey, state }) =>
    state === 'released' ? [] : [{ itemId, lineKey, state }],
  );
}
