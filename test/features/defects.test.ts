import type TestAgent from 'supertest/lib/agent.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Clock } from '../../src/clock.js';
import { Ledger } from '../../src/ledger/ledger.service.js';
import { addDays } from '../../src/rules/calendar/day.js';
import { ENGINES } from '../support/engines.js';
import { startGearServer, type GearServer } from '../support/gear-server.js';
import { promise } from '../support/promise.js';

const today = new Clock().today('Europe/London');
const tomorrow = addDays(today, 1);
const yesterday = addDays(today, -1);

const examination = { type: 'thoroughExamination', doneOn: today, outcome: 'fit' };
const danger = { severity: 'immediateDanger', description: 'jaw cracked' };

describe.each(ENGINES)('what goes wrong with an item on %s', (engine) => {
  let server: GearServer;
  beforeAll(async () => void (server = await startGearServer(engine)));
  afterAll(() => server.close());

  const act = (who: TestAgent, id: number, path: string, body: object) =>
    who.post(`/api/items/${id}/${path}`).send(body);
  const read = async (id: number) => (await server.crew.get(`/api/items/${id}`).expect(200)).body;

  it('never lets a scrapped item come back', async () => {
    const { id } = await server.newItem();
    const scrap = { reason: 'bent for good', howMadeUnusable: 'cut through' };
    for (const who of [server.crew, server.storeman]) await act(who, id, 'scrap', scrap).expect(403);
    await act(server.manager, id, 'scrap', { reason: 'bent for good' }).expect(400);
    expect((await act(server.manager, id, 'scrap', scrap).expect(201)).body.item.condition).toBe('scrapped');
    const attempts: [TestAgent, string, object][] = [
      [server.examiner, 'inspections', { ...examination, release: true }],
      [server.crew, 'defects', danger],
      [server.crew, 'quarantine', { reason: 'x' }],
      [server.storeman, 'repair', { reason: 'x' }],
      [server.manager, 'scrap', scrap],
      [server.crew, 'events', { type: 'repaired', happenedOn: today }],
    ];
    for (const [who, path, body] of attempts) {
      expect((await act(who, id, path, body).expect(409)).body.code).toBe('not_allowed_now');
    }
    await server.storeman.patch(`/api/items/${id}`).set('if-match', '"v2"').send({ notes: 'x' }).expect(409);
    expect(await read(id)).toMatchObject({ condition: 'scrapped', version: 2 });
  });

  it('takes a danger by a date with its date only, and flags the jobs that go beyond it', async () => {
    const { id } = await server.newItem();
    const [soon, later] = [addDays(today, 3), addDays(today, 10)];
    await promise(server, {
      itemId: id,
      storeId: server.storeId,
      reference: `A-${engine}`,
      from: today,
      to: soon,
    });
    await promise(server, {
      itemId: id,
      storeId: server.storeId,
      reference: `B-${engine}`,
      from: addDays(soon, 1),
      to: later,
    });
    const byDate = { severity: 'dangerByDate', description: 'pin worn' };
    await act(server.crew, id, 'defects', byDate).expect(400);
    await act(server.crew, id, 'defects', { ...byDate, lastDayOfUse: yesterday }).expect(400);
    await act(server.crew, id, 'defects', { ...danger, lastDayOfUse: soon }).expect(400);
    const made = await act(server.crew, id, 'defects', { ...byDate, lastDayOfUse: soon }).expect(201);
    expect(made.body.affectedJobs.map(({ reference }: { reference: string }) => reference)).toEqual([
      `B-${engine}`,
    ]);
    expect(made.body.item.condition).toBe('inService');
    expect((await server.crew.get(`/api/items/${id}/due`)).body.defectDeadline).toBe(soon);
    const note = await act(server.crew, id, 'defects', {
      severity: 'observation',
      description: 'paint',
    }).expect(201);
    expect(note.body.affectedJobs).toEqual([]);
  });

  it('flags each job an item is promised to, out late ones too, and none it is done with', async () => {
    const { id } = await server.newItem();
    const row = { itemId: id, storeId: server.storeId };
    const past = addDays(today, -20);
    await promise(server, {
      ...row,
      reference: `OUT-${engine}`,
      from: past,
      to: addDays(past, 5),
      state: 'out',
    });
    await promise(server, {
      ...row,
      reference: `GONE-${engine}`,
      from: addDays(past, 6),
      to: addDays(past, 7),
      state: 'back',
    });
    await promise(server, {
      ...row,
      reference: `FREE-${engine}`,
      from: tomorrow,
      to: tomorrow,
      state: 'released',
    });
    await promise(server, { ...row, reference: `NEXT-${engine}`, from: tomorrow, to: tomorrow });
    expect((await read(id)).custody).toMatchObject({
      state: 'out',
      jobReference: `OUT-${engine}`,
      late: true,
    });
    const made = await act(server.crew, id, 'quarantine', { reason: 'bent' }).expect(201);
    const flagged: { reference: string; jobId: number }[] = made.body.affectedJobs;
    expect(flagged.map(({ reference }) => reference)).toEqual([`OUT-${engine}`, `NEXT-${engine}`]);
  });

  it('flags the jobs of an item whose record changes in what fitness goes by, and no others', async () => {
    const { id } = await server.newItem();
    const jobId = await promise(server, {
      itemId: id,
      storeId: server.storeId,
      reference: `EDIT-${engine}`,
      from: tomorrow,
      to: tomorrow,
    });
    const flags = async () => {
      const entries = await server.app.get(Ledger).newest(50, { kind: 'job', id: jobId });
      return entries.map(({ action, detail }) => ({ action, detail }));
    };
    const patch = (version: number, body: object) =>
      server.storeman.patch(`/api/items/${id}`).set('if-match', `"v${version}"`).send(body).expect(200);
    await patch(1, { notes: 'repainted' });
    expect(await flags()).toEqual([]);
    await patch(2, { markings: [{ measure: 'workingLoadLimit', value: '400', unit: 'kg' }] });
    const detail = expect.objectContaining({
      itemId: id,
      because: 'item.edited',
      from: tomorrow,
      to: tomorrow,
    });
    expect(await flags()).toEqual([{ action: 'booking.flagged', detail }]);
  });

  it('flags the jobs that go beyond the day an examiner named', async () => {
    const { id } = await server.newItem();
    const row = { itemId: id, storeId: server.storeId };
    const named = addDays(today, 5);
    await promise(server, { ...row, reference: `IN-${engine}`, from: tomorrow, to: named });
    await promise(server, {
      ...row,
      reference: `OVER-${engine}`,
      from: addDays(named, 1),
      to: addDays(named, 1),
    });
    const made = await act(server.examiner, id, 'inspections', { ...examination, nextDueOn: named }).expect(
      201,
    );
    const references = made.body.affectedJobs.map(({ reference }: { reference: string }) => reference);
    expect(references).toEqual([`OVER-${engine}`]);
  });
});
