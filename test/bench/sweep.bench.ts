import 'reflect-metadata';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { describe, expect, it } from 'vitest';
import { Clock } from '../../src/clock.js';
import { Ledger } from '../../src/ledger/ledger.service.js';
import { SYSTEM_ACTOR } from '../../src/people/actor.js';
import { insertItems, itemRow } from '../../src/register/new-item.js';
import { DueDiary } from '../../src/reminders/diary/diary.service.js';
import { DueIndex } from '../../src/reminders/due-index/due-index.service.js';
import { addDays, addMonths, type Day } from '../../src/rules/calendar/day.js';
import { UnitOfWork } from '../../src/storage/unit-of-work.js';
import { StoresService } from '../../src/stores/stores.service.js';
import { createApp } from '../../src/web/create-app.js';
import { freshDatabase } from '../support/engines.js';

const SIZES = [1_000, 1_000_000];
const DUE = 500;
const DAYS_AHEAD = 30;
const RUNS = 15;
const STALE = 1_000;

/** The sweep's cost must follow what is due: the register may grow a thousandfold. */
const MOST_TIMES = 3;

describe('finding what is due on the embedded database', () => {
  it(
    'takes no more than three times as long in a register of a million as in one of a thousand',
    async () => {
      await timesAt(SIZES[0] ?? 0); // the first of all warms up the process, which would flatter the ratio
      const rows = [];
      for (const items of SIZES) rows.push(await timesAt(items));
      console.table(rows);
      const [small, large] = rows.map((row) => row['diary, median ms']);
      expect((large ?? Infinity) / (small ?? 1)).toBeLessThanOrEqual(MOST_TIMES);
    },
    20 * 60_000,
  );
});

async function timesAt(items: number) {
  const { settings, remove } = await freshDatabase('sqlite');
  const app = await createApp(settings, { quiet: true });
  await app.init();
  const today = app.get(Clock, { strict: false }).today('Europe/London');
  await fill(app, items, today);
  const diary = app.get(DueDiary, { strict: false });
  expect(await diary.entries({ daysAhead: DAYS_AHEAD })).toHaveLength(DUE);
  const sweep = await medianMs(() => diary.entries({ daysAhead: DAYS_AHEAD }));
  const refresh = await refreshMs(app);
  await markStale(app, items);
  const reworked = await medianMs(() => diary.entries({ daysAhead: DAYS_AHEAD, newestStaleOnly: true }));
  await app.close();
  await remove();
  return {
    items,
    due: DUE,
    'diary, median ms': sweep,
    'refresh of 1 000 stale, ms': refresh,
    'page while all are stale, median ms': reworked,
  };
}

/** Examined items, of which the first fall due in a week and all others in five months. */
async function fill(app: NestFastifyApplication, items: number, today: Day): Promise<void> {
  const store = { name: 'Yard', address: 'Quay', scheme: 'gb', timeZone: 'Europe/London' };
  const { id: storeId } = await app.get(StoresService, { strict: false }).create(SYSTEM_ACTOR, store);
  const index = app.get(DueIndex, { strict: false });
  await index.refresh();
  const markings = [{ measure: 'workingLoadLimit' as const, value: '2', unit: 't' }];
  const input = { tag: 'LS-1', kind: 'sling', maker: 'Norfell', serial: 'N1', storeId, markings };
  await app
    .get(Ledger, { strict: false })
    .change(SYSTEM_ACTOR, (change) => insertItems(change, [itemRow(input, change.at)]));
  const [soon, late] = [addMonths(addDays(today, 7), -6), addMonths(today, -1)];
  const unitOfWork = app.get(UnitOfWork, { strict: false });
  await unitOfWork.run(async (manager) => {
    await manager.query(copiesOfFirst(await columnsOf(manager.query.bind(manager)), items));
    await manager.query(
      `INSERT INTO inspection (item_id, type, done_on, outcome, done_by, remarks, recorded_at)
       SELECT id, 'thoroughExamination', CASE WHEN id <= ${DUE} THEN '${soon}' ELSE '${late}' END, 'fit', 'A. Examiner', '',
         '${today}T00:00:00.000Z' FROM item`,
    );
    await manager.query(
      `INSERT INTO due_day (item_id, store_id, due_on)
       SELECT id, store_id, CASE WHEN id <= ${DUE} THEN '${addMonths(soon, 6)}' ELSE '${addMonths(late, 6)}' END FROM item`,
    );
    await manager.query('DELETE FROM due_stale');
    expect(await manager.query('SELECT COUNT(*) AS items FROM due_day')).toEqual([{ items }]);
  });
}

async function columnsOf(query: (sql: string) => Promise<{ name: string }[]>): Promise<string[]> {
  return (await query('PRAGMA table_info(item)')).map(({ name }) => name).filter((name) => name !== 'id');
}

/** A statement that fills the table with items like the first one, each with marks of its own. */
function copiesOfFirst(columns: readonly string[], items: number): string {
  const own: Readonly<Record<string, string>> = {
    tag: "'LS-' || n",
    tag_key: "'LS' || n",
    tag_look_alike_key: "'LS' || n",
    serial: "'N' || n",
    serial_key: "'N' || n",
    look_alike_key: "'N' || n",
  };
  const values = columns.map((column) => own[column] ?? `item."${column}"`);
  return `WITH RECURSIVE numbers (n) AS (SELECT 2 UNION ALL SELECT n + 1 FROM numbers WHERE n < ${items})
    INSERT INTO item (${columns.map((column) => `"${column}"`).join(', ')})
    SELECT ${values.join(', ')} FROM numbers JOIN item ON item.id = 1`;
}

async function refreshMs(app: NestFastifyApplication): Promise<number> {
  await markStale(app, STALE);
  const start = performance.now();
  expect(await app.get(DueIndex, { strict: false }).refresh()).toBe(STALE);
  return rounded(performance.now() - start);
}

async function markStale(app: NestFastifyApplication, items: number): Promise<void> {
  const statement = `INSERT INTO due_stale (item_id) SELECT id FROM item ORDER BY id LIMIT ${items}`;
  await app.get(UnitOfWork, { strict: false }).run((manager) => manager.query(statement));
}

async function medianMs(work: () => Promise<unknown>): Promise<number> {
  const times: number[] = [];
  for (let run = 0; run < RUNS; run += 1) {
    const start = performance.now();
    await work();
    times.push(performance.now() - start);
  }
  return rounded(times.sort((a, b) => a - b)[Math.floor(RUNS / 2)] ?? 0);
}

function rounded(ms: number): number {
  return Math.round(ms * 10) / 10;
}
