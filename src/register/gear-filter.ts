import type { EntityManager } from 'typeorm';
import { placeholders } from '../storage/placeholders.js';

/** Whose facts are asked for: every item of some kinds, of one store, or items by their numbers. */
export type GearFilter =
  | { readonly kinds: readonly string[] }
  | { readonly storeId: number }
  | { readonly itemIds: readonly number[] };

const IDS_AT_A_TIME = 500;

/**
 * Runs a statement over the items of the filter and gives its rows. `statement` is handed the condition on the table
 * `item` to place in its WHERE, and the number of the first parameter that is free after it. Kinds go in one
 * statement, numbers in chunks.
 */
export async function queryItems<Row extends object>(
  manager: EntityManager,
  filter: GearFilter,
  statement: (condition: string, nextParameter: number) => { sql: string; more?: readonly unknown[] },
): Promise<Row[]> {
  const rows: Row[] = [];
  const [column, values] = columnOf(filter);
  for (let start = 0; start < values.length; start += IDS_AT_A_TIME) {
    const chunk = values.slice(start, start + IDS_AT_A_TIME);
    const { sql, more = [] } = statement(`${column} IN (${placeholders(chunk.length)})`, chunk.length + 1);
    rows.push(...(await manager.query<Row[]>(sql, [...chunk, ...more])));
  }
  return rows;
}

function columnOf(filter: GearFilter): [string, readonly (string | number)[]] {
  if ('kinds' in filter) return ['item.kind', filter.kinds];
  if ('storeId' in filter) return ['item.store_id', [filter.storeId]];
  return ['item.id', [...new Set(filter.itemIds)]];
}
