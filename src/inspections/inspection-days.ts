import { In, type EntityManager } from 'typeorm';
import { InspectionEntity } from './inspection.entity.js';

const IDS_AT_A_TIME = 500;

/** The days on which each item was inspected, as `item day`. */
export async function inspectedDays(
  manager: EntityManager,
  itemIds: readonly number[],
): Promise<Set<string>> {
  const days = new Set<string>();
  for (let start = 0; start < itemIds.length; start += IDS_AT_A_TIME) {
    const ids = itemIds.slice(start, start + IDS_AT_A_TIME);
    const found = await manager.find(InspectionEntity, {
      select: ['itemId', 'doneOn'],
      where: { itemId: In(ids) },
    });
    for (const { itemId, doneOn } of found) days.add(`${itemId} ${doneOn}`);
  }
  return days;
}

/** The last day of each type on which each item was found fit, as `item type`; corrected records are left out. */
export async function lastFitDays(
  manager: EntityManager,
  { after, through }: { after: number; through: number },
): Promise<Map<string, string>> {
  const records = await manager
    .createQueryBuilder(InspectionEntity, 'record')
    .leftJoin(InspectionEntity, 'later', 'later.supersedes_id = record.id')
    .where('record.item_id > :after AND record.item_id <= :through', { after, through })
    .andWhere('later.id IS NULL')
    .andWhere("record.outcome = 'fit'")
    .orderBy('record.done_on')
    .getMany();
  return new Map(records.map(({ itemId, type, doneOn }) => [`${itemId} ${type}`, doneOn]));
}
