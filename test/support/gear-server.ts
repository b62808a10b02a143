import type TestAgent from 'supertest/lib/agent.js';
import type { Settings } from '../../src/settings.js';
import { startServer, type TestServer } from './test-server.js';
import type { Engine } from './engines.js';

/** A server with a store in London, and someone of each role signed in. */
export interface GearServer extends TestServer {
  readonly storeId: number;
  readonly storeman: TestAgent;
  readonly crew: TestAgent;
  readonly examiner: TestAgent;
  readonly secondExaminer: TestAgent;
  readonly manager: TestAgent;
  /** A fresh item like a panel lifter of 500 kg, with these differences; gives what the API answered. */
  newItem(differences?: object): Promise<{ id: number; version: number; tag: string }>;
}

let serials = 0;

/** What the API takes for a new panel lifter; every call has a tag and serial of its own. */
export function lifter(storeId: number, differences: object = {}): Record<string, unknown> {
  serials += 1;
  const number = String(serials).padStart(4, '0').replaceAll('0', '3').replaceAll('1', '4');
  const sizes = { jawMinimumMm: '80', jawMaximumMm: '140', headBoreMm: '62' };
  return {
    tag: `PL-${serials}`,
    kind: 'panelLifter',
    storeId,
    maker: 'Harrow Works',
    serial: `HW ${number}/${serials}X`,
    markings: [{ measure: 'workingLoadLimit', value: '500', unit: 'kg' }],
    ...('kind' in differences ? {} : { dimensions: sizes }),
    ...differences,
  };
}

/** Starts it on an empty database of the engine. */
export async function startGearServer(engine: Engine, other: Partial<Settings> = {}): Promise<GearServer> {
  const server = await startServer(engine, other);
  const [storeman, crew, manager] = [
    await server.signedIn('storeman'),
    await server.signedIn('crew'),
    await server.signedIn('manager'),
  ];
  const [examiner, secondExaminer] = [
    await server.signedIn('competentPerson'),
    await server.signedIn('competentPerson'),
  ];
  const store = { name: 'Yard', address: '1 Quay', scheme: 'gb', timeZone: 'Europe/London' };
  const { body } = await manager.post('/api/stores').send(store).expect(201);
  const storeId: number = body.id;
  return {
    ...server,
    storeId,
    storeman,
    crew,
    manager,
    examiner,
    secondExaminer,
    async newItem(differences) {
      const made = await storeman.post('/api/items').send(lifter(storeId, differences)).expect(201);
      return made.body;
    },
  };
}
