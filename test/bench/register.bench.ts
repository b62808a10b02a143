import 'reflect-metadata';
import { describe, expect, it } from 'vitest';
import { Ledger } from '../../src/ledger/ledger.service.js';
import { SYSTEM_ACTOR } from '../../src/people/actor.js';
import type { FindItemsDto } from '../../src/register/register-search.dto.js';
import { insertItems, itemRow } from '../../src/register/new-item.js';
import { RegisterSearch } from '../../src/register/register-search.service.js';
import { Reads } from '../../src/storage/reads.js';
import { StoresService } from '../../src/stores/stores.service.js';
import { createApp } from '../../src/web/create-app.js';
import { freshDatabase } from '../support/engines.js';

const SIZES = [1_000, 100_000];
const RUNS = 40;

describe('finding items on the embedded database', () => {
  it(
    'times the search of the register beside a bare look-up by an index',
    async () => {
      const rows = [];
      for (const size of SIZES) rows.push(...(await timesAt(size)));
      console.table(rows);
      expect(rows.length).toBeGreaterThan(0);
    },
    10 * 60_000,
  );
});

async function timesAt(size: number): Promise<object[]> {
  const { settings, remove } = await freshDatabase('sqlite');
  const app = await createApp(settings, { quiet: true });
  await app.init();
  const store = { name: 'Yard', address: 'Quay', scheme: 'gb', timeZone: 'Europe/London' };
  const { id: storeId } = await app.get(StoresService, { strict: false }).create(SYSTEM_ACTOR, store);
  await fill(app.get(Ledger, { strict: false }), size, storeId);
  const [search, reads] = [app.get(RegisterSearch, { strict: false }), app.get(Reads, { strict: false })];
  const floor = await medianMs(() =>
    reads.manager.query('SELECT tag FROM item WHERE tag_key >= $1 ORDER BY tag_key LIMIT 50', ['RS-5']),
  );
  const queries: Record<string, FindItemsDto> = {
    'first page': {},
    'tag RS-50': { text: 'RS-50' },
    'serial N7': { text: 'N7' },
    'kind and store': { kind: 'ratchetStrap', storeId },
    quarantined: { condition: 'quarantined' },
  };
  const rows = [];
  for (const [name, query] of Object.entries(queries)) {
    const ms = await medianMs(() => search.find(query));
    rows.push({
      items: size,
      search: name,
      'median ms': ms,
      'times the bare look-up': Math.round(ms / floor),
    });
  }
  await app.close();
  await remove();
  return [
    { items: size, search: 'bare look-up of 50 rows', 'median ms': floor, 'times the bare look-up': 1 },
    ...rows,
  ];
}

async function fill(ledger: Ledger, size: number, storeId: number): Promise<void> {
  await ledger.change(SYSTEM_ACTOR, async (change) => {
    for (let start = 0; start < size; start += 5_000) {
      const count = Math.min(5_000, size - start);
      const rows = Array.from({ length: count }, (_, index) => {
        const number = start + index;
        const markings = [{ measure: 'lashingCapacity' as const, value: '2500', unit: 'daN' }];
        const input = {
          tag: `RS-${number}`,
          kind: 'ratchetStrap',
          maker: 'Norfell',
          serial: `N${number}`,
          storeId,
          markings,
        };
        return itemRow(input, change.at);
      });
      await insertItems(change, rows);
    }
  });
}

async function medianMs(work: () => Promise<unknown>): Promise<number> {
  const times: number[] = [];
  for (let run = 0; run < RUNS; run += 1) {
    const start = performance.now();
    await work();
    times.push(performance.now() - start);
  }
  const middle = times.sort((a, b) => a - b)[RUNS / 2] ?? 0;
  return Math.round(middle * 100) / 100;
}
