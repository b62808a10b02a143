import { expect } from 'vitest';
import { Clock } from '../../src/clock.js';
import { DueIndex } from '../../src/reminders/due-index/due-index.service.js';
import { Reads } from '../../src/storage/reads.js';
import type { GearServer } from './gear-server.js';

/** A row of the index of due days, as text: the item, its store, its day. */
type Row = `${number} at ${number} on ${string}`;

/** What the index of due days holds, by item. */
export async function indexRows(server: Pick<GearServer, 'app'>): Promise<Row[]> {
  const rows = await server.app
    .get(Reads, { strict: false })
    .manager.query<{ item_id: number; store_id: number; due_on: string }[]>(
      'SELECT item_id, store_id, CAST(due_on AS varchar(10)) AS due_on FROM due_day ORDER BY item_id',
    );
  return rows.map(({ item_id, store_id, due_on }) => rowOf(item_id, store_id, due_on));
}

/** The due day that the index has of an item, or undefined. */
export async function indexedDay(
  server: Pick<GearServer, 'app'>,
  itemId: number,
): Promise<string | undefined> {
  const row = (await indexRows(server)).find((each) => each.startsWith(`${itemId} at `));
  return row?.slice(-10);
}

/** Works off what is stale and expects that the index says of every item what the register says of it. */
export async function expectWholeIndex(server: GearServer): Promise<void> {
  await server.app.get(DueIndex, { strict: false }).refresh();
  expect(await indexRows(server)).toEqual(await registerRows(server));
  const { manager } = server.app.get(Reads, { strict: false });
  expect(await manager.query('SELECT id FROM due_stale')).toEqual([]);
}

interface ItemRow {
  readonly id: number;
  readonly storeId: number;
  readonly condition: string;
  readonly currency: string;
  readonly dueOn?: string;
  readonly custody: { readonly state: string };
}

/** What the register's API says of all items, one by one and without any index. */
async function registerRows(server: GearServer): Promise<Row[]> {
  const items: ItemRow[] = [];
  for (let after: string | undefined; ;) {
    const { body } = await server.crew
      .get('/api/items')
      .query({ limit: 200, ...(after === undefined ? {} : { after }) })
      .expect(200);
    items.push(...body.items);
    if (!body.next) break;
    after = body.next;
  }
  const entered = await enteredOn(server);
  return items
    .sort((a, b) => a.id - b.id)
    .flatMap((item) => {
      if (item.condition !== 'inService' || item.custody.state === 'missing') return [];
      const days = [item.dueOn, item.currency === 'neverExamined' ? entered.get(item.id) : undefined];
      const [first] = days.filter((day) => day !== undefined).sort();
      return first === undefined ? [] : [rowOf(item.id, item.storeId, first)];
    });
}

/** The day on which each item was entered, at its store. */
async function enteredOn(server: GearServer): Promise<ReadonlyMap<number, string>> {
  const rows = await server.app
    .get(Reads, { strict: false })
    .manager.query<{ id: number; created_at: string; time_zone: string }[]>(
      'SELECT item.id, item.created_at, store.time_zone FROM item JOIN store ON store.id = item.store_id',
    );
  const clock = server.app.get(Clock);
  return new Map(rows.map(({ id, created_at, time_zone }) => [id, clock.dayAt(created_at, time_zone)]));
}

function rowOf(itemId: number, storeId: number, dueOn: string): Row {
  return `${itemId} at ${storeId} on ${dueOn}`;
}
