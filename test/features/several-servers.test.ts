import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SCHEMA } from '../../src/schema.js';
import type { Settings } from '../../src/settings.js';
import { openStorage, type Storage } from '../../src/storage/open-storage.js';
import { ENGINES, freshDatabase } from '../support/engines.js';

/** A job that waits until it is told to go on, and says when it has begun. */
function heldJob(): { begun: Promise<void>; letGo: () => void; job: () => Promise<string> } {
  let letGo = () => {};
  let begin = () => {};
  const released = new Promise<void>((resolve) => (letGo = resolve));
  const begun = new Promise<void>((resolve) => (begin = resolve));
  const job = async () => {
    begin();
    await released;
    return 'done';
  };
  return { begun, letGo, job };
}

describe('two servers on one fresh PostgreSQL', () => {
  let settings: Settings;
  let remove: () => Promise<void>;
  let servers: Storage[] = [];
  beforeAll(async () => {
    ({ settings, remove } = await freshDatabase('postgres'));
    servers = await Promise.all([1, 2, 3].map(() => openStorage(settings, SCHEMA)));
  });
  afterAll(async () => {
    await Promise.all(servers.map((server) => server.close()));
    await remove();
  });

  it('start together: one migrates, the others find it done', async () => {
    const names = await servers[0]?.reads.manager.query<{ name: string }[]>('SELECT name FROM migrations');
    expect(names?.map(({ name }) => name).sort()).toEqual(SCHEMA.migrations.map(({ name }) => name).sort());
  });

  it('run a job on one of them at a time', async () => {
    const [one, two] = servers;
    const held = heldJob();
    const first = one?.oneAtATime.tryRun('sweep', held.job);
    await held.begun;
    await expect(two?.oneAtATime.tryRun('sweep', async () => 'also')).resolves.toBeUndefined();
    await expect(two?.oneAtATime.tryRun('another', async () => 'apart')).resolves.toBe('apart');
    held.letGo();
    await expect(first).resolves.toBe('done');
    await expect(two?.oneAtATime.tryRun('sweep', async () => 'now')).resolves.toBe('now');
  });

  it('give the turn on when the one that had it loses its connection', async () => {
    const [one, two] = servers;
    const held = heldJob();
    const first = one?.oneAtATime.tryRun('sweep', held.job);
    await held.begun;
    const ended = await two?.reads.manager.query<object[]>(
      `SELECT pg_terminate_backend(pid) FROM pg_locks WHERE locktype = 'advisory'
         AND database = (SELECT oid FROM pg_database WHERE datname = current_database())`,
    );
    expect(ended).toHaveLength(1);
    const turn = () => two?.oneAtATime.tryRun('sweep', async () => 'taken over');
    await expect.poll(turn).toBe('taken over');
    held.letGo();
    await expect(first).rejects.toThrow();
  });
});

describe.each(ENGINES)('one server on %s', (engine) => {
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

  it('does not begin a job that it is at already, and begins it again after a failure', async () => {
    const held = heldJob();
    const first = storage.oneAtATime.tryRun('sweep', held.job);
    await held.begun;
    await expect(storage.oneAtATime.tryRun('sweep', async () => 'twice')).resolves.toBeUndefined();
    held.letGo();
    await expect(first).resolves.toBe('done');
    const failing = storage.oneAtATime.tryRun('sweep', () => Promise.reject(new Error('no luck')));
    await expect(failing).rejects.toThrow('no luck');
    await expect(storage.oneAtATime.tryRun('sweep', async () => 'again')).resolves.toBe('again');
  });
});
