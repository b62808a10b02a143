import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DueIndex, MOST_STALE_SHOWN } from '../../src/reminders/due-index/due-index.service.js';
import { Clock } from '../../src/clock.js';
import { addDays, addMonths } from '../../src/rules/calendar/day.js';
import { Reads } from '../../src/storage/reads.js';
import { UnitOfWork } from '../../src/storage/unit-of-work.js';
import { expectWholeIndex, indexedDay } from '../support/due-index-check.js';
import { ENGINES } from '../support/engines.js';
import { startGearYard, type GearYard } from '../support/gear-yard.js';
import { handOver } from '../support/import-client.js';
import { itemCalls } from '../support/item-calls.js';

describe.each(ENGINES)('the index of due days on %s', (engine) => {
  let yard: GearYard;
  let elsewhereId: number;
  beforeAll(async () => {
    yard = await startGearYard(engine);
    const perth = { name: 'Perth', address: '3 Quay', scheme: 'au', timeZone: 'Australia/Perth' };
    elsewhereId = (await yard.manager.post('/api/stores').send(perth).expect(201)).body.id;
  });
  afterAll(() => yard.close());

  const examination = { type: 'thoroughExamination', outcome: 'fit' };
  const { record, act, read } = itemCalls(() => yard, examination);

  /** The due day of an item by the index, once that says of every item what the register says. */
  async function dayOf(id: number): Promise<string | undefined> {
    await expectWholeIndex(yard);
    return indexedDay(yard, id);
  }

  async function edit(id: number, changes: object): Promise<void> {
    const { headers } = await yard.crew.get(`/api/items/${id}`).expect(200);
    await yard.storeman
      .patch(`/api/items/${id}`)
      .set('if-match', String(headers['etag']))
      .send(changes)
      .expect(200);
  }

  // GB: LOLER 1998 reg 9(3)(a) asks every six months for lifting accessories.
  it('follows examinations: the first, the next, one that names a day, one that corrects another', async () => {
    const { id } = await yard.newItem();
    expect(await dayOf(id)).toBe(yard.day(0));
    await record(yard.examiner, id, { doneOn: yard.day(-100) }).expect(201);
    expect(await dayOf(id)).toBe(addMonths(yard.day(-100), 6));
    await record(yard.examiner, id, { doneOn: yard.day(-9) }).expect(201);
    expect(await dayOf(id)).toBe(addMonths(yard.day(-9), 6));
    await record(yard.examiner, id, { doneOn: yard.day(-8), nextDueOn: yard.day(30) }).expect(201);
    expect(await dayOf(id)).toBe(yard.day(30));
    const records = (await yard.crew.get(`/api/items/${id}/inspections`).expect(200)).body as {
      id: number;
      doneOn: string;
    }[];
    const supersedesId = records.find(({ doneOn }) => doneOn === yard.day(-8))?.id;
    await record(yard.examiner, id, { doneOn: yard.day(-70), supersedesId }).expect(201);
    expect(await dayOf(id)).toBe(addMonths(yard.day(-9), 6));
  });

  it('drops what fails, is scrapped or sent to repair, and takes back what is released', async () => {
    const [failed, scrapped, mended] = [await yard.newItem(), await yard.newItem(), await yard.newItem()];
    for (const { id } of [failed, scrapped, mended])
      await record(yard.examiner, id, { doneOn: yard.day(-20) }).expect(201);
    await record(yard.examiner, failed.id, { doneOn: yard.day(0), outcome: 'unfit' }).expect(201);
    expect(await dayOf(failed.id)).toBeUndefined();
    await act(yard.manager, scrapped.id, 'scrap', { reason: 'bent', howMadeUnusable: 'cut' }).expect(201);
    expect(await dayOf(scrapped.id)).toBeUndefined();
    await act(yard.storeman, mended.id, 'quarantine', { reason: 'noisy' }).expect(201);
    expect(await dayOf(mended.id)).toBeUndefined();
    await act(yard.storeman, mended.id, 'repair', { reason: 'new bearing' }).expect(201);
    expect(await dayOf(mended.id)).toBeUndefined();
    await record(yard.secondExaminer, mended.id, { doneOn: yard.day(0), release: true }).expect(201);
    expect(await dayOf(mended.id)).toBe(addMonths(yard.day(0), 6));
  });

  it('follows defects and events, and what answers them', async () => {
    const { id } = await yard.gear('DI-3');
    const worn = { severity: 'dangerByDate', description: 'pad worn', lastDayOfUse: yard.day(5) };
    await act(yard.crew, id, 'defects', worn).expect(201);
    expect(await dayOf(id)).toBe(yard.day(5));
    await act(yard.crew, id, 'events', { type: 'dropped', happenedOn: yard.day(-1) }).expect(201);
    expect(await dayOf(id)).toBe(yard.day(-1));
    await record(yard.examiner, id, { doneOn: yard.day(0) }).expect(201);
    const after = (await read(id)).dueOn;
    expect(await dayOf(id)).toBe(after);
    expect(after).not.toBe(yard.day(-1));
    await act(yard.crew, id, 'defects', { severity: 'immediateDanger', description: 'cracked' }).expect(201);
    expect(await dayOf(id)).toBeUndefined();
  });

  it('follows what is written of the item: its own interval, the declaration, its store', async () => {
    const { id } = await yard.gear('DI-4');
    const written = [{ type: 'thoroughExamination', months: 3, reference: 'S-1' }];
    await edit(id, { writtenSchemes: written });
    expect(await dayOf(id)).toBe(addMonths(yard.day(-10), 3));
    await edit(id, { storeId: yard.farStoreId });
    expect(await dayOf(id)).toBe(addMonths(yard.day(-10), 3));
    const unused = await yard.newItem();
    expect(await dayOf(unused.id)).toBe(yard.day(0));
    // LOLER 1998 reg 9(1): new gear may be used on its maker's declaration, and is then due from that day on.
    await edit(unused.id, { declarationOn: yard.day(-30) });
    expect(await dayOf(unused.id)).toBe(addMonths(yard.day(-30), 6));
    await edit(unused.id, { owner: 'Hire yard', hiredFrom: yard.day(-30), hiredTo: yard.day(60) });
    expect(await dayOf(unused.id)).toBe(addMonths(yard.day(-30), 6));
  });

  it('follows lifts that are counted on a job, where the rules of the store count them', async () => {
    const sling = await yard.gear('DI-5', { kind: 'sling', rating: ['5', 't'], storeId: elsewhereId });
    const line = { label: 'Legs', kind: 'sling', duty: 'lifting', quantity: 1, reason: 'in this test' };
    const id = await yard.job({ only: [], from: 0, to: 20 });
    const { headers } = await yard.storeman.get(`/api/jobs/${id}`).expect(200);
    await yard.storeman
      .patch(`/api/jobs/${id}`)
      .set('if-match', String(headers['etag']))
      .send({ scheme: 'au', addedLines: [{ ...line, rating: { value: '1', unit: 't' } }] })
      .expect(200);
    await yard.storeman.post(`/api/jobs/${id}/reservation`).expect(201);
    await yard.storeman.post(`/api/jobs/${id}/hand-outs`).send({ tag: 'DI-5' }).expect(201);
    const before = await dayOf(sling.id);
    const count = (lifts: number) =>
      yard.crew
        .post(`/api/jobs/${id}/lifts`)
        .send({ onDay: yard.day(0), lifts })
        .expect(201);
    await count(800);
    expect(await dayOf(sling.id)).toBe(yard.day(0));
    await count(799);
    expect(await dayOf(sling.id)).toBe(before);
    await count(800);
    await yard.storeman.post(`/api/jobs/${id}/returns`).send({ tag: 'DI-5', condition: 'good' }).expect(201);
    expect(await dayOf(sling.id)).toBe(yard.day(0));
  });

  it('drops what did not come back, and takes it back when it turns up', async () => {
    const { id } = await yard.gear('DI-6');
    const job = await yard.job({ from: 0, to: 2 });
    await yard.storeman.post(`/api/jobs/${job}/reservation`).expect(201);
    const { body } = await yard.crew.get(`/api/jobs/${job}/booking`).expect(200);
    const { tag, itemId } = body.items[0];
    await yard.storeman.post(`/api/jobs/${job}/hand-outs`).send({ tag }).expect(201);
    await yard.storeman.post(`/api/jobs/${job}/returns`).send({ tag, condition: 'missing' }).expect(201);
    expect(await dayOf(itemId)).toBeUndefined();
    await act(yard.storeman, itemId, 'found', {}).expect(204);
    expect(await dayOf(itemId)).toBeDefined();
    expect(await dayOf(id)).toBeDefined();
  });

  it('follows the rules and the time zone of a store', async () => {
    const store = { name: `Third ${engine}`, address: '4 Quay', scheme: 'gb', timeZone: 'Europe/London' };
    const { body } = await yard.manager.post('/api/stores').send(store).expect(201);
    const { id } = await yard.gear('DI-7', { kind: 'sling', rating: ['5', 't'], storeId: body.id });
    const inGb = await dayOf(id);
    const days = new Map<string, string | undefined>();
    for (const scheme of ['eu', 'us', 'au']) {
      const { headers } = await yard.manager.get(`/api/stores/${body.id}`).expect(200);
      await yard.manager
        .patch(`/api/stores/${body.id}`)
        .set('if-match', String(headers['etag']))
        .send({ scheme, timeZone: 'Pacific/Auckland' })
        .expect(200);
      days.set(scheme, await dayOf(id));
    }
    expect(new Set([inGb, ...days.values()]).size).toBeGreaterThan(1);
  });

  it('takes in what a list brings, with the examinations it names', async () => {
    const rows = ['DI-20,sling,Norfell,N20,2 t,', `DI-21,sling,Norfell,N21,2 t,${yard.day(-50)}`];
    const list = ['Tag,Kind,Make,Serial,WLL,Last exam', ...rows].join('\r\n');
    const { uploadId, mapping } = await handOver(yard.storeman, list);
    const path = `/api/register/import/${uploadId}`;
    await yard.storeman.post(`${path}/mapping`).send({ ...mapping, storeId: yard.farStoreId });
    await yard.storeman.post(`${path}/accept`).send({ mode: 'allOrNothing' }).expect(200);
    const { body } = await yard.crew.get('/api/items').query({ text: 'DI-2' }).expect(200);
    const [never, examined] = body.items;
    expect(await dayOf(never.id)).toBe(yard.day(0));
    expect(await dayOf(examined.id)).toBe(addMonths(yard.day(-50), 6));
  });

  it('keeps since when an item falls due on its day at its store, until either changes', async () => {
    const { id } = await yard.gear('DI-40');
    const { manager } = yard.app.get(Reads, { strict: false });
    const { unitOfWork, index, clock } = {
      unitOfWork: yard.app.get(UnitOfWork, { strict: false }),
      index: yard.app.get(DueIndex, { strict: false }),
      clock: yard.app.get(Clock),
    };
    const write = (statement: string) => unitOfWork.run((writer) => writer.query(statement));
    const sinceAt = async (hour: number) => {
      await clock.at(`${yard.day(0)}T${hour}:00:00.000Z`, () => index.refresh());
      const [row] = await manager.query<{ since: string | null }[]>(
        `SELECT since FROM due_day WHERE item_id = ${id}`,
      );
      return row && (row.since?.slice(11, 13) ?? 'ever');
    };
    expect(await sinceAt(10)).toBe('10');
    await write(`INSERT INTO due_stale (item_id) VALUES (${id})`);
    expect(await sinceAt(11)).toBe('10');
    await act(yard.crew, id, 'events', { type: 'dropped', happenedOn: yard.day(-1) }).expect(201);
    expect(await sinceAt(12)).toBe('12');
    await edit(id, { storeId: yard.farStoreId });
    expect(await sinceAt(13)).toBe('13');
    await act(yard.storeman, id, 'quarantine', { reason: 'noisy' }).expect(201);
    expect(await sinceAt(14)).toBeUndefined();
    await record(yard.secondExaminer, id, { doneOn: yard.day(0), release: true }).expect(201);
    expect(await sinceAt(15)).toBe('15');
    // A row from before the column was there.
    await write(`UPDATE due_day SET since = NULL WHERE item_id = ${id}`);
    await write(`INSERT INTO due_stale (item_id) VALUES (${id})`);
    expect(await sinceAt(16)).toBe('ever');
  });

  it('finds what is due by a day, and what may be since it was worked out last', async () => {
    const [soon, later] = [await yard.gear('DI-8'), await yard.gear('DI-9', { examinedDaysAgo: 0 })];
    await expectWholeIndex(yard);
    const index = yard.app.get(DueIndex, { strict: false });
    const { manager } = yard.app.get(Reads, { strict: false });
    const through = addMonths(yard.day(-10), 6);
    const found = () => index.candidates(manager, { storeId: yard.storeId, through });
    expect(await found()).toContain(soon.id);
    expect(await found()).not.toContain(later.id);
    const eve = addDays(through, -1);
    expect(await index.candidates(manager, { storeId: yard.storeId, through: eve })).not.toContain(soon.id);
    await act(yard.crew, later.id, 'events', { type: 'dropped', happenedOn: yard.day(0) }).expect(201);
    expect(await found()).toContain(later.id);
    expect(await index.candidates(manager, { storeId: yard.farStoreId, through })).not.toContain(later.id);
  });

  it('looks at the newest stale items only for a page while a register is worked out again, and says so', async () => {
    const [old, fresh] = [await yard.gear('DI-30', { examinedDaysAgo: 0 }), await yard.gear('DI-31')];
    await expectWholeIndex(yard);
    const index = yard.app.get(DueIndex, { strict: false });
    const { manager } = yard.app.get(Reads, { strict: false });
    expect(await index.catchingUp(manager)).toBe(0);
    expect(await index.state(manager)).toBeDefined();
    const mark = (id: number, times: number) =>
      yard.app.get(UnitOfWork, { strict: false }).run((writer) =>
        writer.query(
          `WITH RECURSIVE n (n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM n WHERE n < ${times})
           INSERT INTO due_stale (item_id) SELECT ${id} FROM n`,
        ),
      );
    await mark(old.id, 1);
    await mark(fresh.id, MOST_STALE_SHOWN);
    const from = { storeId: yard.storeId, through: yard.day(-1) };
    expect(await index.candidates(manager, from)).toEqual(expect.arrayContaining([old.id, fresh.id]));
    const shown = await index.candidates(manager, { ...from, newestStaleOnly: true });
    expect(shown).toContain(fresh.id);
    expect(shown).not.toContain(old.id);
    expect(await index.catchingUp(manager)).toBe(MOST_STALE_SHOWN + 1);
    expect(await index.state(manager)).toBeUndefined();
    expect((await yard.crew.get('/api/diary').expect(200)).body.catchingUp).toBe(MOST_STALE_SHOWN + 1);
    expect((await yard.crew.get('/diary').expect(200)).text).toContain('2001 due days are being worked out');
    await expectWholeIndex(yard);
    expect((await yard.crew.get('/diary').expect(200)).text).not.toContain('being worked out');
  });
});
