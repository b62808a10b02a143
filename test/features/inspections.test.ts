import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addDays, addMonths, toDay } from '../../src/rules/calendar/day.js';
import { UnitOfWork } from '../../src/storage/unit-of-work.js';
import { Clock } from '../../src/clock.js';
import { ENGINES } from '../support/engines.js';
import { startGearServer, type GearServer } from '../support/gear-server.js';
import { itemCalls } from '../support/item-calls.js';
import { promise } from '../support/promise.js';

const today = new Clock().today('Europe/London');
const tomorrow = addDays(today, 1);
const yesterday = addDays(today, -1);

const examination = { type: 'thoroughExamination', doneOn: today, outcome: 'fit' };
const danger = { severity: 'immediateDanger', description: 'jaw cracked' };

/** Writes each row of a table over itself, without a word of UPDATE or DELETE. */
function replacing(engine: (typeof ENGINES)[number], table: string, key = 'id'): string {
  return engine === 'sqlite'
    ? `INSERT OR REPLACE INTO ${table} SELECT * FROM ${table}`
    : `INSERT INTO ${table} SELECT * FROM ${table} ON CONFLICT (${key}) DO UPDATE SET ${key} = EXCLUDED.${key}`;
}

describe.each(ENGINES)('inspections on %s', (engine) => {
  let server: GearServer;
  beforeAll(async () => void (server = await startGearServer(engine)));
  afterAll(() => server.close());

  const { record, act, read, actions, refusedField } = itemCalls(() => server, examination);

  it('records an examination: the item is in date, with its working and a report on file', async () => {
    const { id } = await server.newItem();
    const made = await record(server.examiner, id, { doneOn: yesterday, reportNumber: 'TE-1' }).expect(201);
    expect(made.body).toMatchObject({
      affectedJobs: [],
      item: { currency: 'inDate', certificateOnFile: true, version: 2 },
    });
    const due = await server.crew.get(`/api/items/${id}/due`).expect(200);
    expect(due.body.inspections[0].workings[0].inputs).toEqual(
      expect.arrayContaining([expect.objectContaining({ value: yesterday })]),
    );
    const fit = await server.crew.get(`/api/items/${id}/fitness`).expect(200);
    expect(fit.body).toMatchObject({ fit: true, duty: 'lifting', refusals: [] });
    const late = await server.crew
      .get(`/api/items/${id}/fitness`)
      .query({ from: today, to: addMonths(today, 24) })
      .expect(200);
    expect(late.body.refusals.map(({ code }: { code: string }) => code)).toContain('due_during_job');
    await server.crew.get(`/api/items/${id}/fitness`).query({ from: today, to: yesterday }).expect(400);
  });

  it('keeps examinations to competent persons', async () => {
    const { id } = await server.newItem();
    for (const type of ['thoroughExamination', 'proofLoadTest']) {
      for (const who of [server.storeman, server.crew, server.manager]) {
        expect((await record(who, id, { type, doneBy: 'A. Body' }).expect(403)).body.code).toBe(
          'not_your_role',
        );
      }
      await record(server.examiner, id, { type }).expect(201);
    }
    await record(server.crew, id, { type: 'interimInspection', doneBy: 'A. Body' }).expect(403);
    expect(await refusedField(server.storeman, id, { type: 'interimInspection' })).toContain(
      'doneBy: write who did it',
    );
    await record(server.storeman, id, { type: 'interimInspection', doneBy: 'A. Body' }).expect(201);
    for (const who of [server.crew, server.examiner]) {
      expect(await refusedField(who, id, { type: 'preUseCheck' })).toContain('POST /api/items/:id/checks');
    }
    expect((await server.crew.get(`/api/items/${id}/inspections`).expect(200)).body).toHaveLength(3);
  });

  it('refuses days that cannot be, and fields that say nothing', async () => {
    const { id } = await server.newItem({ manufacturedOn: '2024-01-02' });
    expect(await refusedField(server.examiner, id, { doneOn: tomorrow })).toContain(
      'doneOn: is in the future',
    );
    expect(await refusedField(server.examiner, id, { doneOn: '2024-01-01' })).toContain(
      'before the item was made',
    );
    expect(await refusedField(server.examiner, id, { doneOn: '2024-02-30' })).toContain('a day that exists');
    expect(await refusedField(server.examiner, id, { nextDueOn: today })).toContain('nextDueOn: comes after');
    expect(await refusedField(server.examiner, id, { outcome: 'perhaps' })).toContain(
      'choose from fit, unfit',
    );
    expect(await refusedField(server.examiner, id, { type: 'look' })).toContain('choose from');
    expect(await refusedField(server.examiner, id, { passed: true })).toContain(
      'not a field of this request',
    );
    expect(await refusedField(server.examiner, id, { remarks: 'a\u0000b' })).toContain('remarks');
    for (const field of ['nextDueOn', 'doneBy', 'reportNumber', 'remarks', 'supersedesId', 'release']) {
      expect(await refusedField(server.examiner, id, { [field]: null })).toContain(`${field}: `);
    }
    await record(server.examiner, id, { doneOn: '2024-01-02', nextDueOn: '2024-01-03' }).expect(201);
    await record(server.examiner, 99_999_999).expect(404);
  });

  it('puts an item found unfit into quarantine in the same change, and flags its jobs', async () => {
    const { id } = await server.newItem();
    const to = addDays(today, 9);
    await promise(server, {
      itemId: id,
      storeId: server.storeId,
      reference: `UNFIT-${engine}`,
      from: tomorrow,
      to,
    });
    const made = await record(server.examiner, id, { outcome: 'unfit', remarks: 'weld cracked' }).expect(201);
    expect(made.body.item).toMatchObject({ condition: 'quarantined', conditionSince: today });
    expect(made.body.item.conditionReason).toContain('weld cracked');
    expect(made.body.affectedJobs).toEqual([
      expect.objectContaining({ reference: `UNFIT-${engine}`, from: tomorrow, to }),
    ]);
    expect(await actions(id)).toEqual(['item.quarantined', 'inspection.recorded', 'item.created']);
  });

  it('is out of date by an examination that failed, though it was taken back by none', async () => {
    const { id } = await server.newItem();
    await record(server.examiner, id, { doneOn: yesterday });
    await record(server.examiner, id, { outcome: 'unfit' });
    expect(await read(id)).toMatchObject({ condition: 'quarantined', currency: 'outOfDate' });
  });

  it('corrects a record by a new one, once, for the same item and type', async () => {
    const [{ id }, other] = [await server.newItem(), await server.newItem()];
    await record(server.examiner, id, { doneOn: '2020-01-05' });
    const [wrong] = (await server.crew.get(`/api/items/${id}/inspections`).expect(200)).body;
    expect((await read(id)).currency).toBe('outOfDate');
    const correction = { doneOn: yesterday, supersedesId: wrong.id };
    expect(await refusedField(server.examiner, other.id, correction)).toContain('not a record of this item');
    expect(await refusedField(server.examiner, id, { ...correction, type: 'proofLoadTest' })).toContain(
      'another type',
    );
    expect(await refusedField(server.examiner, id, { ...correction, release: true })).toContain(
      'releases nothing',
    );
    await record(server.examiner, id, correction).expect(201);
    expect((await read(id)).currency).toBe('inDate');
    const again = await record(server.examiner, id, correction).expect(409);
    expect(again.body.code).toBe('not_allowed_now');
    const records = (await server.crew.get(`/api/items/${id}/inspections`).expect(200)).body;
    expect(records.map(({ superseded }: { superseded: boolean }) => superseded)).toEqual([false, true]);
  });

  it('counts the correction even where it moves the day back', async () => {
    const { id } = await server.newItem();
    await record(server.examiner, id, { doneOn: yesterday });
    const [wrong] = (await server.crew.get(`/api/items/${id}/inspections`)).body;
    await record(server.examiner, id, { doneOn: '2020-01-05', supersedesId: wrong.id }).expect(201);
    expect((await read(id)).currency).toBe('outOfDate');
  });

  it('refuses to change or delete a record, whoever asks the database (invariant 2)', async () => {
    const { id } = await server.newItem();
    await record(server.examiner, id).expect(201);
    await act(server.crew, id, 'events', { type: 'dropped', happenedOn: yesterday }).expect(201);
    await act(server.crew, id, 'defects', danger).expect(201);
    const unitOfWork = server.app.get(UnitOfWork);
    for (const statement of [
      "UPDATE inspection SET outcome = 'unfit'",
      'DELETE FROM inspection',
      "UPDATE gear_event SET remarks = ''",
      'DELETE FROM gear_event',
      "UPDATE ledger_entry SET actor_name = 'nobody'",
      'DELETE FROM ledger_entry',
      "UPDATE defect SET description = ''",
      'DELETE FROM defect',
      ...['inspection', 'gear_event', 'defect'].map((table) => replacing(engine, table)),
      replacing(engine, 'ledger_entry', 'number'),
    ]) {
      await expect(unitOfWork.run((manager) => manager.query(statement))).rejects.toThrow('append_only');
    }
    expect((await server.crew.get(`/api/items/${id}/inspections`)).body).toHaveLength(1);
  });

  it('closes a defect once, and never opens it again, whoever asks the database (invariant 2)', async () => {
    const { id } = await server.newItem();
    await act(server.crew, id, 'defects', danger).expect(201);
    await record(server.examiner, id, { release: true }).expect(201);
    const [closed] = (await server.crew.get(`/api/items/${id}/defects`)).body;
    expect(closed.closedByInspectionId).toEqual(expect.any(Number));
    for (const by of ['NULL', 'closed_by_inspection_id']) {
      const statement = `UPDATE defect SET closed_by_inspection_id = ${by} WHERE id = ${closed.id}`;
      const run = server.app.get(UnitOfWork).run((manager) => manager.query(statement));
      await expect(run).rejects.toThrow('append_only');
    }
  });

  it('leaves nothing of a refused change: no record, no line of history', async () => {
    const { id } = await server.newItem();
    await record(server.examiner, id, { release: true }).expect(409);
    expect((await server.crew.get(`/api/items/${id}/inspections`)).body).toEqual([]);
    expect(await actions(id)).toEqual(['item.created']);
    expect((await read(id)).version).toBe(1);
  });

  it('asks for a fresh examination after an event', async () => {
    const { id } = await server.newItem();
    await record(server.examiner, id, { doneOn: addDays(today, -5) }).expect(201);
    await act(server.crew, id, 'events', { type: 'overloaded', happenedOn: tomorrow }).expect(400);
    await act(server.crew, id, 'events', {
      type: 'repaired',
      happenedOn: yesterday,
      remarks: 'new pin',
    }).expect(201);
    expect((await read(id)).currency).toBe('outOfDate');
    await record(server.examiner, id).expect(201);
    expect((await read(id)).currency).toBe('inDate');
  });

  it('counts the latest record of each type, of two on one day the one recorded later', async () => {
    const { id } = await server.newItem();
    for (const doneOn of ['2021-03-03', yesterday, '2022-03-03'])
      await record(server.examiner, id, { doneOn }).expect(201);
    const due = (await server.crew.get(`/api/items/${id}/due`)).body;
    expect(due.inspections[0].lastDoneOn).toBe(yesterday);
    const named = toDay(addDays(today, 7));
    await record(server.examiner, id, { doneOn: yesterday, nextDueOn: named }).expect(201);
    expect(await read(id)).toMatchObject({ dueOn: named, currency: 'dueSoon' });
  });

  it('does it from the pages too, and shows it on the rating plate', async () => {
    const { id, tag } = await server.newItem();
    const refused = await server.examiner
      .post(`/register/${id}/inspection`)
      .type('form')
      .send({ ...examination, doneOn: tomorrow });
    expect(refused.status).toBe(400);
    expect(refused.text).toContain('is in the future');
    const answer = await server.examiner
      .post(`/register/${id}/inspection`)
      .type('form')
      .send({ ...examination, reportNumber: 'R-1' });
    expect([answer.status, answer.headers['location']]).toEqual([303, `/register/${id}`]);
    const page = (await server.crew.get(`/register/${id}`).expect(200)).text;
    expect(page).toContain('class="plate"');
    expect(page).toContain(tag);
    expect(page).toContain('Fit for lifting today');
    await server.crew.post(`/register/${id}/defect`).type('form').send(danger).expect(303);
    const after = (await server.crew.get(`/register/${id}`).expect(200)).text;
    expect(after).toContain('Not to be used today');
    expect(after).not.toContain('/scrap"');
    for (const path of ['defect', 'event', 'quarantine'])
      await server.crew.get(`/register/${id}/${path}`).expect(200);
    for (const path of ['repair', 'scrap', 'inspection'])
      await server.crew.get(`/register/${id}/${path}`).expect(403);
  });
});
