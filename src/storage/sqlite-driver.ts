import { mkdirSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { DataSourceOptions } from 'typeorm';

/**
 * All that Tackleroom knows of the `sqlite3` driver. Its upstream is archived, so a change of driver
 * has to be a change of this file alone.
 */

/** The flag of the SQLite C interface that opens a file for reading only. */
const OPEN_READONLY = 1;

/** How long a connection waits for a lock that another process holds, in milliseconds. */
const BUSY_TIMEOUT_MS = 5_000;

/**
 * Loads the driver, so that a missing native part is met here and not in the middle of a request.
 * @throws Error that says what to type when the native part does not load on this machine.
 */
function loadDriver(): object {
  try {
    const driver: unknown = createRequire(import.meta.url)('sqlite3');
    if (typeof driver !== 'object' || driver === null) throw new Error('sqlite3 is not a module');
    // TypeORM turns on stack traces per call, which costs a third of the speed and tells nothing here.
    return Object.assign(driver, { verbose: () => driver });
  } catch (error) {
    throw new Error(
      'The embedded database did not load on this machine. Type:\n' +
        '  npm rebuild sqlite3\n' +
        'and start again. Building it needs python3, make and a C++ compiler. ' +
        'To use PostgreSQL instead, set DATABASE_URL.',
      { cause: error },
    );
  }
}

/** The connection all writes go through. Creates the folder where it does not exist. */
export function sqliteWriterOptions(dataDir: string): DataSourceOptions {
  mkdirSync(dataDir, { recursive: true });
  return {
    type: 'sqlite',
    driver: loadDriver(),
    database: databaseFile(dataDir),
    enableWAL: true,
    busyTimeout: BUSY_TIMEOUT_MS,
  };
}

/** A connection that sees committed rows only and cannot write. Open the writer first: it creates the write-ahead log. */
export function sqliteReaderOptions(dataDir: string): DataSourceOptions {
  return {
    type: 'sqlite',
    driver: loadDriver(),
    database: databaseFile(dataDir),
    flags: OPEN_READONLY,
    enableWAL: false,
    busyTimeout: BUSY_TIMEOUT_MS,
  };
}

/** Deletes the embedded database of a folder with its log files, if there is one. For the demo, which starts afresh. */
export function removeEmbeddedDatabase(dataDir: string): void {
  for (const suffix of ['', '-wal', '-shm']) rmSync(databaseFile(dataDir) + suffix, { force: true });
}

function databaseFile(dataDir: string): string {
  return join(dataDir, 'tackleroom.sqlite');
}
