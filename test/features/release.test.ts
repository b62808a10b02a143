import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addDays } from '../../src/rules/calendar/day.js';
import { Clock } from '../../src/clock.js';
import { DefectsService } from '../../src/inspections/defects.service.js';
import type { Actor } from '../../src/people/actor.js';
import { ENGINES } from '../support/engines.js';
import { startGearServer, type GearServer } from '../support/gear-server.js';
import { itemCalls } from '../support/item-calls.js';

const today = new Clock().today('Europe/London');
const tomorrow = addDays(today, 1);
const yesterday = addDays(today, -1);

const examination = { type: 'thoroughExamination', doneOn: today, outcome: 'fit' };
const SOMEONE: Actor = { id: null, name: 'Tackleroom', roles: ['crew'] };
const danger = { severity: 'immediateDanger', description: 'jaw cracked' };

describe.each(ENGINES)('release from quarantine (invariant 4) on %s', (engine) => {
  let server: GearServer;
  beforeAll(async () => void (server = await startGearServer(engine)));
  afterAll(() => server.close());

  const { record, act, read, actions, refusedField } = itemCalls(() => server, examination);
  const newest = async (id: number): Promise<number> => {
    const { body } = await server.crew.get(`/api/items/${id}/inspections`).expect(200);
    return Math.max(...body.map((each: { id: number }) => each.id));
  };

  it('is for a competent person other than the one who reported it', async () => {
    const { id } = await server.newItem();
    await act(server.examiner, id, 'defects', danger).expect(201);
    expect(await read(id)).toMatchObject({ condition: 'quarantined', conditionReason: 'jaw cracked' });
    const own = await record(server.examiner, id, { release: true }).expect(409);
    expect(own.body.detail).toContain('another competent person');
    for (const who of [server.storeman, server.manager, server.crew]) {
      await record(who, id, { release: true, doneBy: 'A. Body' }).expect(403);
    }
    const released = await record(server.secondExaminer, id, { release: true }).expect(201);
    expect(released.body.item).toMatchObject({
      condition: 'inService',
      conditionReason: null,
      conditionSince: null,
    });
    const defects = (await server.crew.get(`/api/items/${id}/defects`).expect(200)).body;
    expect(defects[0].closedByInspectionId).toEqual(expect.any(Number));
    expect((await actions(id)).slice(0, 4)).toEqual([
      'notice.settled',
      'item.released',
      'defect.closed',
      'inspection.recorded',
    ]);
  });

  it('does not follow from an examination that does not say so, or failed, or was another type', async () => {
    const { id } = await server.newItem();
    await act(server.crew, id, 'quarantine', { reason: 'bent' }).expect(201);
    await record(server.examiner, id).expect(201);
    expect((await read(id)).condition).toBe('quarantined');
    expect(await refusedField(server.examiner, id, { release: true, outcome: 'unfit' })).toContain(
      'stays where it is',
    );
    for (const type of ['interimInspection', 'proofLoadTest']) {
      expect(await refusedField(server.examiner, id, { release: true, type })).toContain(
        'only a thorough examination',
      );
    }
    expect((await read(id)).condition).toBe('quarantined');
  });

  it('needs an examination no older than the quarantine', async () => {
    const { id } = await server.newItem();
    await act(server.crew, id, 'quarantine', { reason: 'bent' }).expect(201);
    const old = await record(server.examiner, id, { release: true, doneOn: yesterday }).expect(409);
    expect(old.body.detail).toContain('after that examination');
    await record(server.examiner, id, { release: true }).expect(201);
  });

  it('needs an examination no older than a defect that it would close, in service or out of it', async () => {
    const { id } = await server.newItem();
    const byDate = { severity: 'dangerByDate', description: 'pad worn', lastDayOfUse: tomorrow };
    await act(server.crew, id, 'defects', byDate).expect(201);
    const old = await record(server.examiner, id, { release: true, doneOn: yesterday }).expect(409);
    expect(old.body.detail).toMatch(/defect \d+ was reported on .*, after that examination/);
    const found = await server.newItem();
    await server.app
      .get(Clock)
      .at(`${addDays(today, -3)}T12:00:00.000Z`, () =>
        server.app.get(DefectsService).quarantine(SOMEONE, found.id, 'bent'),
      );
    await act(server.crew, found.id, 'defects', danger).expect(201);
    await record(server.examiner, found.id, { release: true, doneOn: yesterday }).expect(409);
    for (const open of [id, found.id]) {
      const [defect] = (await server.crew.get(`/api/items/${open}/defects`).expect(200)).body;
      expect(defect.closedByInspectionId).toBeNull();
      await record(server.examiner, open, { release: true }).expect(201);
    }
  });

  it('is not undone in silence: a correction of what released names no earlier day', async () => {
    const { id } = await server.newItem();
    await act(server.crew, id, 'quarantine', { reason: 'bent' }).expect(201);
    await record(server.examiner, id, { release: true }).expect(201);
    const closed = await server.newItem();
    await act(server.crew, closed.id, 'defects', { severity: 'observation', description: 'scuffed' });
    await record(server.examiner, closed.id, { release: true }).expect(201);
    for (const item of [id, closed.id]) {
      const first = await newest(item);
      const earlier = await record(server.examiner, item, { supersedesId: first, doneOn: yesterday });
      expect(earlier.status).toBe(409);
      expect(earlier.body.detail).toContain('take the item out of service');
      await record(server.examiner, item, { supersedesId: first, reportNumber: 'R-3' }).expect(201);
      const again = { supersedesId: await newest(item), doneOn: yesterday };
      await record(server.examiner, item, again).expect(409);
    }
    const plain = await server.newItem();
    await record(server.examiner, plain.id).expect(201);
    await record(server.examiner, plain.id, {
      supersedesId: await newest(plain.id),
      doneOn: yesterday,
    }).expect(201);
  });

  it('is not won by reporting again, by repair, or by reporting into a quarantine that stands', async () => {
    const { id } = await server.newItem();
    await act(server.examiner, id, 'quarantine', { reason: 'bent' }).expect(201);
    await act(server.crew, id, 'quarantine', { reason: 'bent' }).expect(409);
    await act(server.crew, id, 'defects', danger).expect(201);
    await act(server.storeman, id, 'repair', { reason: 'straighten' }).expect(201);
    await act(server.storeman, id, 'repair', { reason: 'straighten' }).expect(409);
    await record(server.examiner, id, { release: true }).expect(409);
    await act(server.secondExaminer, id, 'defects', danger).expect(201);
    await record(server.secondExaminer, id, { release: true }).expect(409);
    expect((await read(id)).condition).toBe('underRepair');
    const third = await server.signedIn('competentPerson');
    expect((await record(third, id, { release: true }).expect(201)).body.item.condition).toBe('inService');
  });

  it('is not for the examiner whose own finding took it out of service', async () => {
    const { id } = await server.newItem();
    await record(server.examiner, id, { outcome: 'unfit' }).expect(201);
    await record(server.examiner, id, { release: true }).expect(409);
    const released = await record(server.secondExaminer, id, { release: true }).expect(201);
    expect(released.body.item).toMatchObject({ condition: 'inService', currency: 'inDate' });
  });

  it('takes an examination on the day of a repair for its answer when it was recorded after, and not before', async () => {
    const repaired = { type: 'repaired', happenedOn: today };
    const after = await server.newItem();
    await act(server.crew, after.id, 'events', repaired).expect(201);
    await record(server.examiner, after.id, { reportNumber: 'R1' }).expect(201);
    expect(await read(after.id)).toMatchObject({ currency: 'inDate' });
    const before = await server.newItem();
    await record(server.examiner, before.id, { reportNumber: 'R2' }).expect(201);
    await act(server.crew, before.id, 'events', repaired).expect(201);
    expect(await read(before.id)).toMatchObject({ currency: 'outOfDate' });
  });

  it('cannot be had by changing the record of the item', async () => {
    const { id } = await server.newItem();
    await act(server.crew, id, 'quarantine', { reason: 'bent' }).expect(201);
    const patch = server.storeman
      .patch(`/api/items/${id}`)
      .set('if-match', '"v2"')
      .send({ condition: 'inService' });
    expect((await patch.expect(400)).body.errors[0].field).toBe('condition');
  });

  it('closes the defects of an item in service too, by someone other than their reporter', async () => {
    const { id } = await server.newItem();
    const byDate = { severity: 'dangerByDate', description: 'pin worn', lastDayOfUse: tomorrow };
    await act(server.examiner, id, 'defects', byDate).expect(201);
    await record(server.examiner, id, { release: true }).expect(409);
    await record(server.secondExaminer, id, { release: true }).expect(201);
    expect((await server.crew.get(`/api/items/${id}/due`)).body.defectDeadline).toBeUndefined();
  });
});
