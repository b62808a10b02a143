import { once } from 'node:events';
import { rmSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ApiClient } from '../support/api-client.js';
import { startBuiltServer, type BuiltServer } from '../support/built-server.js';

const ROWS = 5_000;
const ACCOUNT = { signInName: 'storeman', password: 'a password of some length' };

/** The server is killed at these times after it was told to take the rows, in milliseconds. */
const KILL_AFTER_MS = [0, 30, 100, 250, 500, 900, 1_500];

describe('a server killed in the middle of an import', () => {
  let server: BuiltServer;
  beforeAll(async () => {
    server = await startBuiltServer();
    const client = await ApiClient.signIn(server.address, { ...ACCOUNT, setupCode: server.setupCode ?? '' });
    await client.post('/api/stores', {
      name: 'North',
      address: 'Quay',
      scheme: 'gb',
      timeZone: 'Europe/London',
    });
  });
  afterAll(async () => {
    await server.stop();
    rmSync(server.dataDir, { recursive: true, force: true });
  });

  it('has taken all of it or none of it, and its history holds', async () => {
    let taken = 0;
    for (const delay of KILL_AFTER_MS) {
      const before = await countItems(server);
      const acknowledged = await importAndKill(server, delay, taken);
      server = await startBuiltServer({ dataDir: server.dataDir });
      const after = await countItems(server);
      expect([before, before + ROWS], `killed after ${delay} ms`).toContain(after);
      if (acknowledged) expect(after).toBe(before + ROWS);
      if (after > before) taken += 1;
      const client = await ApiClient.signIn(server.address, ACCOUNT);
      expect(await client.get('/api/ledger/check')).toMatchObject({ whole: true });
    }
    const client = await ApiClient.signIn(server.address, ACCOUNT);
    const before = await countItems(server);
    const { uploadId } = await handOver(client, taken);
    await client.post(`/api/register/import/${uploadId}/accept`, { mode: 'allOrNothing' });
    expect(await countItems(server)).toBe(before + ROWS);
  }, 240_000);
});

/** Hands a file over and takes it; kills the server meanwhile. True when the server had answered before it died. */
async function importAndKill(server: BuiltServer, delay: number, batch: number): Promise<boolean> {
  const client = await ApiClient.signIn(server.address, ACCOUNT);
  const { uploadId } = await handOver(client, batch);
  const accepted = client.post(`/api/register/import/${uploadId}/accept`, { mode: 'allOrNothing' }).then(
    () => true,
    () => false,
  );
  await new Promise((resolve) => setTimeout(resolve, delay));
  const dead = once(server.process, 'exit');
  server.process.kill('SIGKILL');
  await dead;
  return accepted;
}

function handOver(client: ApiClient, batch: number): Promise<{ uploadId: string }> {
  const form = new FormData();
  form.append('file', new Blob([registerFile(batch)]), 'register.csv');
  return client.post('/api/register/import', form);
}

function registerFile(batch: number): string {
  const rows = Array.from({ length: ROWS }, (_, index) => {
    const number = batch * ROWS + index;
    return `RS-${number},Ratchet strap,Norfell,${700_000 + number * 3},2500 daN,8 m,2026-03-01,North`;
  });
  return ['Tag,Kind,Maker,Serial,LC,Length,Last examination,Store', ...rows].join('\r\n');
}

async function countItems(server: BuiltServer): Promise<number> {
  const client = await ApiClient.signIn(server.address, ACCOUNT);
  let count = 0;
  let after = '';
  do {
    const page = await client.get<{ items: unknown[]; next?: string }>(`/api/items?limit=200${after}`);
    count += page.items.length;
    after = page.next ? `&after=${encodeURIComponent(page.next)}` : '';
  } while (after);
  return count;
}
