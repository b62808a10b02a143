import { In, type EntityManager } from 'typeorm';
import { CalendarDayEntity } from './calendar-day.entity.js';
import { DueDayEntity } from './due-day.entity.js';

/** A row of the index: an item with its store and its due day. */
export interface IndexRow {
  readonly itemId: number;
  readonly storeId: number;
  readonly dueOn: string;
}

/**
 * Makes the index say of the items what `rows` say, those of them without a row falling due on no day, and counts up
 * every day of a store that one of the items came to, went from or stayed on: a promise changes what is said of the day too.
 */
export async function writeIndex(
  manager: EntityManager,
  { itemIds, rows, at }: { itemIds: readonly number[]; rows: readonly IndexRow[]; at: string },
): Promise<void> {
  const before = await manager.findBy(DueDayEntity, { itemId: In([...itemIds]) });
  const [was, is] = [byItem(before), byItem(rows)];
  const changed = itemIds.filter((id) => dayKey(was.get(id)) !== dayKey(is.get(id)));
  const coming = changed.flatMap((id) => is.get(id) ?? []);
  const going = changed.filter((id) => was.has(id) && !is.has(id));
  if (going.length > 0) await manager.delete(DueDayEntity, { itemId: In(going) });
  if (coming.length > 0) await upsertRows(manager, coming, at);
  const days = itemIds.flatMap((id) => [was.get(id), is.get(id)]).filter((row) => row !== undefined);
  await countUp(manager, days, at);
}

function byItem(rows: readonly IndexRow[]): ReadonlyMap<number, IndexRow> {
  return new Map(rows.map((row) => [row.itemId, row]));
}

/** A store and a day as text; the same for all rows that fall on them, and empty for none. */
export function dayKey(row: IndexRow | undefined): string {
  return row === undefined ? '' : `${row.storeId} ${row.dueOn}`;
}

async function upsertRows(manager: EntityManager, rows: readonly IndexRow[], since: string): Promise<void> {
  await manager
    .createQueryBuilder()
    .insert()
    .into(DueDayEntity)
    .values(rows.map(({ itemId, storeId, dueOn }) => ({ itemId, storeId, dueOn, since })))
    .orUpdate(['store_id', 'due_on', 'since'], ['item_id'])
    .execute();
}

/** Days are written in one order, so that two servers which count up the same days wait for each other and never deadlock. */
async function countUp(manager: EntityManager, rows: readonly IndexRow[], at: string): Promise<void> {
  const days = new Map(rows.map((row) => [dayKey(row), row]));
  const ordered = [...days].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, row]) => row);
  if (ordered.length === 0) return;
  const values = ordered.map((_, place) => `($${place * 3 + 1}, $${place * 3 + 2}, 0, $${place * 3 + 3})`);
  const { tableName } = manager.connection.getMetadata(CalendarDayEntity);
  await manager.query(
    `INSERT INTO ${tableName} (store_id, on_day, sequence, changed_at) VALUES ${values.join(', ')}
     ON CONFLICT (store_id, on_day)
     DO UPDATE SET sequence = calendar_day.sequence + 1, changed_at = excluded.changed_at`,
    ordered.flatMap(({ storeId, dueOn }) => [storeId, dueOn, at]),
  );
}
