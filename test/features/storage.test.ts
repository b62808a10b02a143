import { DataSource } from 'typeorm';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { itemsTaggedLike } from '../../src/register/item-marks.js';
import { ItemEntity } from '../../src/register/item.entity.js';
import { itemRow } from '../../src/register/new-item.js';
import { SCHEMA } from '../../src/schema.js';
import { openStorage, withSchema, type Storage } from '../../src/storage/open-storage.js';
import { sqliteWriterOptions } from '../../src/storage/sqlite-driver.js';
import { StoreEntity } from '../../src/stores/store.entity.js';
import { ENGINES, freshDatabase, type Engine } from '../support/engines.js';
import type { Settings } from '../../src/settings.js';

const store = (name: string) => ({
  name,
  nameKey: name,
  address: 'a',
  scheme: 'gb',
  timeZone: 'UTC',
  version: 1,
});

function dataSource(engine: Engine, { databaseUrl, dataDir }: Settings): DataSource {
  const options =
    engine === 'postgres'
      ? { type: 'postgres' as const, url: databaseUrl ?? '' }
      : sqliteWriterOptions(dataDir);
  return new DataSource(withSchema(options, SCHEMA));
}

describe.each(ENGINES)('storage on %s', (engine) => {
  let storage: Storage;
  let remove: () => Promise<void>;
  beforeAll(async () => {
    const database = await freshDatabase(engine);
    remove = database.remove;
    storage = await openStorage(database.settings, SCHEMA);
  });
  afterAll(async () => {
    await storage.close();
    await remove();
  });

  it('keeps each of 200 overlapping units of work whole and apart', async () => {
    const outcomes = await Promise.allSettled(
      Array.from({ length: 200 }, (_, number) =>
        storage.unitOfWork.run(async (manager) => {
          await manager.insert(StoreEntity, store(`first ${number}`));
          await new Promise((resolve) => setTimeout(resolve, number % 3));
          if (number % 7 === 0) throw new Error('business error');
          await manager.insert(StoreEntity, store(`second ${number}`));
        }),
      ),
    );
    const kept = outcomes.flatMap(({ status }, number) => (status === 'fulfilled' ? [number] : []));
    expect(kept).toHaveLength(200 - 29);
    const rows = await storage.reads.manager.find(StoreEntity);
    const expected = kept.flatMap((number) => [`first ${number}`, `second ${number}`]);
    expect(rows.map(({ name }) => name).sort()).toEqual(expected.sort());
  });

  it('refuses a unit of work inside another', async () => {
    const nested = storage.unitOfWork.run(() => storage.unitOfWork.run(async () => undefined));
    await expect(nested).rejects.toThrow('inside a job');
  });

  it('lets a reader see committed rows only', async () => {
    const seen = await storage.unitOfWork.run(async (manager) => {
      await manager.insert(StoreEntity, store('not yet'));
      return storage.reads.manager.existsBy(StoreEntity, { name: 'not yet' });
    });
    expect(seen).toBe(false);
    expect(await storage.reads.manager.existsBy(StoreEntity, { name: 'not yet' })).toBe(true);
  });

  it('has one migration history that goes up, down and up again and leaves no drift', async () => {
    const database = await freshDatabase(engine);
    const source = await dataSource(engine, database.settings).initialize();
    await source.runMigrations();
    const drift = await source.driver.createSchemaBuilder().log();
    expect(drift.upQueries.map(({ query }) => query)).toEqual([]);
    for (const _ of SCHEMA.migrations) await source.undoLastMigration();
    await source.runMigrations();
    expect(await source.manager.count(StoreEntity)).toBe(0);
    await source.destroy();
    await database.remove();
  });
});

describe.each(ENGINES)('the keys of tags that read alike on %s', (engine) => {
  it('are worked out for the items that were there before, chunk by chunk', async () => {
    const database = await freshDatabase(engine);
    const source = await dataSource(engine, database.settings).initialize();
    await source.runMigrations();
    const { identifiers } = await source.manager.insert(StoreEntity, store('Yard'));
    const storeId = Number(identifiers[0]?.['id']);
    const rows = Array.from({ length: 1_001 }, (_, number) => {
      const item = { tag: `IO-${number}`, kind: 'panelLifter', storeId, maker: 'Harrow Works' };
      return {
        ...itemRow({ ...item, serialUnknown: true }, '2026-11-25T07:30:00.000Z'),
        tagLookAlikeKey: '',
      };
    });
    for (const start of [0, 500, 1_000])
      await source.manager.insert(ItemEntity, rows.slice(start, start + 500));
    const since = SCHEMA.migrations.findIndex(({ name }) => name.startsWith('TagLookAlikes'));
    for (const _ of SCHEMA.migrations.slice(since)) await source.undoLastMigration();
    await source.runMigrations();
    expect(await itemsTaggedLike(source.manager, '10-1000')).toHaveLength(1);
    expect(await source.manager.countBy(ItemEntity, { tagLookAlikeKey: '' })).toBe(0);
    await source.destroy();
    await database.remove();
  });
});

describe('the SQLite writer', () => {
  it('refuses a statement that the job forgot to await, and a write through the reader', async () => {
    const { settings, remove } = await freshDatabase('sqlite');
    const storage = await openStorage(settings, SCHEMA);
    let late: Promise<unknown> = Promise.resolve();
    await storage.unitOfWork.run(async (manager) => {
      late = new Promise((resolve) => setTimeout(resolve, 20)).then(() =>
        manager.insert(StoreEntity, store('late')),
      );
    });
    await expect(late).rejects.toThrow('outside a unit of work');
    await expect(storage.reads.manager.insert(StoreEntity, store('by the reader'))).rejects.toThrow(
      /readonly/,
    );
    await storage.close();
    await remove();
  });
});
