import { In, type EntityManager } from 'typeorm';
import { DueDayEntity } from './due-day.entity.js';
import { dayKey, type IndexRow } from './index-rows.js';

/** More numbers at once than a statement may hold would fail. */
const ITEMS_AT_A_TIME = 500;

/**
 * The instants since which the index knows that items fall due on their days at their stores, by the numbers of the
 * items: `now` where it says otherwise yet. Left out is what has been so since before that was written down.
 */
export async function dueSince(
  manager: EntityManager,
  items: readonly IndexRow[],
  now: string,
): Promise<ReadonlyMap<number, string>> {
  const all = new Map<number, string>();
  for (let start = 0; start < items.length; start += ITEMS_AT_A_TIME) {
    const some = items.slice(start, start + ITEMS_AT_A_TIME);
    const rows = await manager.findBy(DueDayEntity, { itemId: In(some.map(({ itemId }) => itemId)) });
    const rowOf = new Map(rows.map((row) => [row.itemId, row]));
    for (const item of some) {
      const row = rowOf.get(item.itemId);
      const since = row && dayKey(row) === dayKey(item) ? row.since : now;
      if (since !== null) all.set(item.itemId, since);
    }
  }
  return all;
}
