import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DataSource } from 'typeorm';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { Clock } from '../../src/clock.js';
import { Ledger } from '../../src/ledger/ledger.service.js';
import { SYSTEM_ACTOR } from '../../src/people/actor.js';
import { SCHEMA } from '../../src/schema.js';
import { openStorage, withSchema, type Storage } from '../../src/storage/open-storage.js';
import { sqliteWriterOptions } from '../../src/storage/sqlite-driver.js';
import { StoreEntity } from '../../src/stores/store.entity.js';
import { ENGINES, freshDatabase } from '../support/engines.js';

describe.each(ENGINES)('ledger on %s', (engine) => {
  let storage: Storage;
  let ledger: Ledger;
  let database: Awaited<ReturnType<typeof freshDatabase>>;

  beforeEach(async () => {
    database = await freshDatabase(engine);
    storage = await openStorage(database.settings, SCHEMA);
    ledger = new Ledger(storage.unitOfWork, storage.reads, new Clock());
  });
  afterEach(async () => {
    await storage.close();
    await database.remove();
  });

  const write = (name: string) =>
    ledger.change(SYSTEM_ACTOR, async (change) => {
      const row = {
        name,
        nameKey: name,
        address: 'é "quoted" \u2028',
        scheme: 'gb',
        timeZone: 'UTC',
        version: 1,
      };
      await change.manager.insert(StoreEntity, row);
      change.note({
        action: 'store.created',
        subjectKind: 'store',
        subjectId: name,
        detail: { ...row, mass: 478.5 },
      });
    });

  /** Goes past Tackleroom and its triggers, as someone with the database file in hand would. */
  async function tamper(...statements: string[]): Promise<void> {
    const { databaseUrl, dataDir } = database.settings;
    const options = databaseUrl
      ? { type: 'postgres' as const, url: databaseUrl }
      : sqliteWriterOptions(dataDir);
    const source = await new DataSource(withSchema(options, SCHEMA)).initialize();
    const unlock = databaseUrl
      ? ['ALTER TABLE ledger_entry DISABLE TRIGGER ALL']
      : ['DROP TRIGGER ledger_entry_append_only_update', 'DROP TRIGGER ledger_entry_append_only_delete'];
    for (const statement of [...unlock, ...statements]) await source.query(statement);
    await source.destroy();
  }

  it('writes a chain that holds, also under 50 changes at once', async () => {
    await Promise.all(Array.from({ length: 50 }, (_, number) => write(`store ${number}`)));
    expect(await ledger.verify()).toMatchObject({ entries: 50 });
    expect((await ledger.verify()).fault).toBeUndefined();
  });

  it('writes no entry for a change that fails, and no change whose entry fails', async () => {
    await write('one');
    await expect(write('one')).rejects.toThrow();
    const impossible = ledger.change(SYSTEM_ACTOR, async (change) => {
      const row = { name: 'two', nameKey: 'two', address: '', scheme: 'gb', timeZone: 'UTC', version: 1 };
      await change.manager.insert(StoreEntity, row);
      change.note({
        action: 'x'.repeat(61),
        subjectKind: 'store',
        subjectId: '9'.repeat(41),
        detail: { size: 1n },
      });
    });
    await expect(impossible).rejects.toThrow();
    expect(await storage.reads.manager.count(StoreEntity)).toBe(1);
    expect(await ledger.verify()).toMatchObject({ entries: 1 });
  });

  it('has the database itself refuse a change or a removal', async () => {
    await write('one');
    const attempts = ["UPDATE ledger_entry SET actor_name = 'x'", 'DELETE FROM ledger_entry'];
    for (const statement of attempts) {
      await expect(storage.unitOfWork.run((manager) => manager.query(statement))).rejects.toThrow(
        'append_only',
      );
    }
    expect((await ledger.verify()).fault).toBeUndefined();
  });

  it.each([
    [
      'an altered detail',
      ["UPDATE ledger_entry SET detail = '{}' WHERE number = 2"],
      { number: 2, fault: 'altered' },
    ],
    [
      'an altered actor',
      ["UPDATE ledger_entry SET actor_name = 'Other' WHERE number = 3"],
      { number: 3, fault: 'altered' },
    ],
    [
      'an altered hash',
      [`UPDATE ledger_entry SET hash = '${'a'.repeat(64)}' WHERE number = 1`],
      { number: 1, fault: 'altered' },
    ],
    ['a removed row', ['DELETE FROM ledger_entry WHERE number = 2'], { number: 2, fault: 'missing' }],
    ['the first row removed', ['DELETE FROM ledger_entry WHERE number = 1'], { number: 1, fault: 'missing' }],
    ['the last row removed', ['DELETE FROM ledger_entry WHERE number = 4'], { number: 4, fault: 'cut_off' }],
    [
      'two rows that changed places',
      [
        'UPDATE ledger_entry SET number = 9 WHERE number = 2',
        'UPDATE ledger_entry SET number = 2 WHERE number = 3',
        'UPDATE ledger_entry SET number = 3 WHERE number = 9',
      ],
      { number: 2, fault: 'altered' },
    ],
  ])('finds %s', async (_, statements, fault) => {
    for (const name of ['one', 'two', 'three', 'four']) await write(name);
    await tamper(...statements);
    expect((await ledger.verify()).fault).toEqual(fault);
  });

  it('can be checked from its export by a script that shares no code with it', async () => {
    for (const name of ['one', 'zwei ü', '三']) await write(name);
    const entries = [];
    for await (const entry of ledger.entriesInOrder()) entries.push(JSON.stringify(entry));
    const file = join(database.settings.dataDir, 'ledger.jsonl');
    writeFileSync(file, entries.join('\n'));
    const answer = execFileSync(process.execPath, ['test/support/recompute-chain.mjs', file], {
      encoding: 'utf8',
    });
    expect(answer.trim()).toBe(`3 ${(await ledger.verify()).head}`);
  });
});
