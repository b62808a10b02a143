import type { EntityManager } from 'typeorm';
import { queryItems } from '../register/gear-filter.js';

/** The number of the last examination that closed defects of each item, by item number. */
export async function lastReleases(
  manager: EntityManager,
  itemIds: readonly number[],
): Promise<ReadonlyMap<number, number>> {
  const rows = await queryItems<{ item_id: number; last: number }>(manager, { itemIds }, (condition) => ({
    sql: `SELECT defect.item_id, MAX(defect.closed_by_inspection_id) AS last
      FROM item JOIN defect ON defect.item_id = item.id
      WHERE ${condition} AND defect.closed_by_inspection_id IS NOT NULL GROUP BY defect.item_id`,
  }));
  return new Map(rows.map((row) => [row.item_id, row.last]));
}
