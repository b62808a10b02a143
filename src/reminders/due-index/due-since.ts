import type { EntityManager } from 'typeorm';
import { queryItems } from '../../register/gear-filter.js';
import { dayKey, type IndexRow } from './index-rows.js';

interface Row {
  readonly item_id: number;
  readonly store_id: number;
  readonly due_on: string;
  readonly since: string | null;
}

/**
 * The instants since which the index knows that items fall due on their days at their stores, by the numbers of the
 * items: `now` where it says otherwise yet. Left out is what has been so since before that was written down.
 */
export async function dueSince(
  manager: EntityManager,
  items: readonly IndexRow[],
  now: string,
): Promise<ReadonlyMap<number, string>> {
  const itemIds = items.map(({ itemId }) => itemId);
  const rows = await queryItems<Row>(manager, { itemIds }, (condition) => ({
    sql: `SELECT due_day.item_id, due_day.store_id, CAST(due_day.due_on AS varchar(10)) AS due_on, due_day.since
      FROM due_day JOIN item ON item.id = due_day.item_id WHERE ${condition}`,
  }));
  const rowOf = new Map(rows.map((row) => [row.item_id, row]));
  return new Map(
    items.flatMap((item) => {
      const row = rowOf.get(item.itemId);
      const since = row && keyOf(row) === dayKey(item) ? row.since : now;
      return since === null ? [] : [[item.itemId, since] as const];
    }),
  );
}

function keyOf({ item_id: itemId, store_id: storeId, due_on: dueOn }: Row): string {
  return dayKey({ itemId, storeId, dueOn });
}
