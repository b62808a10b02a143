import { readFileSync } from 'node:fs';
import type TestAgent from 'supertest/lib/agent.js';
import { vi } from 'vitest';
import { Clock } from '../../src/clock.js';
import { SYSTEM_ACTOR } from '../../src/people/actor.js';
import type { ImportReportView } from '../../src/register/import/import.dto.js';
import { StoresService } from '../../src/stores/stores.service.js';
import type { TestServer } from './test-server.js';

/** Noon of the day that the sample files are judged by: 25 November 2026. */
export function stopClock(server: TestServer): void {
  vi.spyOn(server.app.get(Clock), 'now').mockReturnValue('2026-11-25T12:00:00.000Z');
}

/** A store, and its number. */
export async function makeStore(server: TestServer, name: string, place = 'gb'): Promise<number> {
  const timeZone = place === 'gb' ? 'Europe/London' : 'Europe/Berlin';
  const store = await server.app
    .get(StoresService)
    .create(SYSTEM_ACTOR, { name, address: 'Quay 1', scheme: place, timeZone });
  return store.id;
}

/** The bytes of a sample file. */
export function sample(name: string): Buffer {
  return readFileSync(new URL(`../golden/samples/${name}`, import.meta.url));
}

/** Hands a file over for a dry run. */
export async function handOver(
  agent: TestAgent,
  bytes: Buffer | string,
  name = 'list.csv',
): Promise<ImportReportView> {
  const response = await agent
    .post('/api/register/import')
    .attach('file', Buffer.from(bytes), name)
    .expect(201);
  return response.body;
}

/** Each fault as `row column code`, in the order of rows. */
export function faultList({ faults }: ImportReportView): string[] {
  return faults.map(({ row, column, code }) => `${row} ${column ?? '-'} ${code}`);
}
