import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Client } from 'pg';
import { inject } from 'vitest';
import type { Settings } from '../../src/settings.js';

/** Both databases that Tackleroom runs on. Feature tests run on each. */
export const ENGINES = ['sqlite', 'postgres'] as const;
export type Engine = (typeof ENGINES)[number];

/** Settings for an empty database of its own on the engine, and the way to get rid of it. */
export async function freshDatabase(
  engine: Engine,
): Promise<{ settings: Settings; remove: () => Promise<void> }> {
  const dataDir = mkdtempSync(join(tmpdir(), 'tackleroom-test-'));
  const settings: Settings = { host: '127.0.0.1', port: 0, dataDir, demo: false };
  const removeDir = async () => rmSync(dataDir, { recursive: true, force: true });
  if (engine === 'sqlite') return { settings, remove: removeDir };
  const server = inject('postgresUrl');
  const database = `t_${randomUUID().replaceAll('-', '')}`;
  await administer(server, `CREATE DATABASE ${database}`);
  return {
    settings: { ...settings, databaseUrl: `${server}/${database}` },
    remove: async () => {
      await administer(server, `DROP DATABASE ${database} WITH (FORCE)`);
      await removeDir();
    },
  };
}

async function administer(server: string, statement: string): Promise<void> {
  const client = new Client({ connectionString: `${server}/postgres` });
  await client.connect();
  await client.query(statement);
  await client.end();
}
