import { DataSource, type DataSourceOptions, type MigrationInterface } from 'typeorm';
import type { Settings } from '../settings.js';
import { AmongServers, InThisProcess, type OneAtATime } from './one-at-a-time.js';
import { PostgresUnitOfWork } from './postgres-unit-of-work.js';
import { Reads } from './reads.js';
import { sqliteReaderOptions, sqliteWriterOptions } from './sqlite-driver.js';
import { SqliteUnitOfWork } from './sqlite-unit-of-work.js';
import type { UnitOfWork } from './unit-of-work.js';

/** What the database holds: given from outside, so that storage knows no feature. */
export interface Schema {
  readonly entities: readonly (new () => object)[];
  readonly migrations: readonly (new () => MigrationInterface)[];
}

/** An open, migrated database. */
export interface Storage {
  readonly unitOfWork: UnitOfWork;
  readonly reads: Reads;
  readonly oneAtATime: OneAtATime;
  close(): Promise<void>;
}

/**
 * Opens the database that the settings name and brings it to the newest migration.
 * @throws Error when it cannot be opened, or when rows point nowhere after migrating.
 */
export async function openStorage(settings: Settings, schema: Schema): Promise<Storage> {
  return settings.databaseUrl
    ? openPostgres(settings.databaseUrl, schema)
    : openSqlite(settings.dataDir, schema);
}

/** The options every data source of ours shares. */
export function withSchema(options: DataSourceOptions, schema: Schema): DataSourceOptions {
  return {
    ...options,
    entities: [...schema.entities],
    migrations: [...schema.migrations],
    migrationsTransactionMode: 'each',
    synchronize: false,
    logging: false,
  };
}

async function openSqlite(dataDir: string, schema: Schema): Promise<Storage> {
  const writer = await new DataSource(withSchema(sqliteWriterOptions(dataDir), schema)).initialize();
  await writer.runMigrations();
  await makeSafe(writer);
  const reader = await new DataSource(withSchema(sqliteReaderOptions(dataDir), schema)).initialize();
  takeTurns(reader);
  return {
    unitOfWork: new SqliteUnitOfWork(writer),
    reads: new Reads(reader.manager),
    oneAtATime: new InThisProcess(),
    close: async () => {
      await reader.destroy();
      await writer.destroy();
    },
  };
}

async function openPostgres(url: string, schema: Schema): Promise<Storage> {
  const dataSource = new DataSource(withSchema({ type: 'postgres', url, extra: { max: 10 } }, schema));
  await dataSource.initialize();
  await migrateInTurn(dataSource);
  return {
    unitOfWork: new PostgresUnitOfWork(dataSource),
    reads: new Reads(dataSource.manager),
    oneAtATime: new AmongServers(dataSource),
    close: () => dataSource.destroy(),
  };
}

/** Servers that start together on one database migrate one after another: the later ones find nothing left to do. */
async function migrateInTurn(dataSource: DataSource): Promise<void> {
  const runner = dataSource.createQueryRunner();
  try {
    await runner.query(`SELECT pg_advisory_lock(hashtext('tackleroom migrations'))`);
    await dataSource.runMigrations();
    await runner.query(`SELECT pg_advisory_unlock(hashtext('tackleroom migrations'))`);
  } finally {
    await runner.release();
  }
}

/**
 * An acknowledged write must survive a power cut, so every commit reaches the disk. A row that replaces another is no way
 * round the triggers that keep history. Asserted, because a pragma that is misspelt is ignored.
 */
async function makeSafe(writer: DataSource): Promise<void> {
  await writer.query('PRAGMA synchronous = FULL');
  await writer.query('PRAGMA recursive_triggers = ON');
  const expected = { journal_mode: 'wal', synchronous: 2, recursive_triggers: 1, foreign_keys: 1 };
  for (const [pragma, value] of Object.entries(expected)) {
    const [row] = await writer.query<Record<string, unknown>[]>(`PRAGMA ${pragma}`);
    const found = Object.values(row ?? {})[0];
    if (found !== value)
      throw new Error(`The database runs with ${pragma} = ${String(found)}, not ${value}.`);
  }
  const dangling = await writer.query<unknown[]>('PRAGMA foreign_key_check');
  if (dangling.length > 0) throw new Error('Rows of the database point nowhere.');
}

/**
 * Lets one statement at a time onto the reader. More than one would wait on the driver's mutex while
 * holding threads of the pool that the writer needs.
 */
function takeTurns(reader: DataSource): void {
  const runner = reader.createQueryRunner();
  const query = runner.query.bind(runner);
  let tail: Promise<unknown> = Promise.resolve();
  runner.query = (...statement: Parameters<typeof query>) => {
    const result = tail.then(() => query(...statement));
    tail = result.catch(() => undefined);
    return result;
  };
}
