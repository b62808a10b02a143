import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ChecksService } from '../../src/checks/checks.service.js';
import { Clock } from '../../src/clock.js';
import { HandOuts } from '../../src/custody/hand-outs.service.js';
import { Lifts } from '../../src/custody/lifts.service.js';
import { Reservations } from '../../src/custody/reservations.service.js';
import { Returns } from '../../src/custody/returns.service.js';
import { JobsService } from '../../src/jobs/jobs.service.js';
import type { Actor } from '../../src/people/actor.js';
import { checkAnswers } from '../support/check-answers.js';
import { examination, worn } from '../support/example-examination.js';
import { ENGINES } from '../support/engines.js';
import { jobInput, startGearYard, type GearYard } from '../support/gear-yard.js';

const NORA: Actor = { id: 1, name: 'Nora Gill', roles: ['storeman'] };
const OLE: Actor = { id: 2, name: 'Ole Bast', roles: ['storeman', 'crew'] };
const TAG = 'TR-1';

describe.each(ENGINES)('tracing on %s', (engine) => {
  let yard: GearYard;
  let itemId: number;
  const jobs: number[] = [];

  /** A job of two days on which the item went out with one storeman and came back with another. */
  async function job(reference: string, from: number, lifts: readonly number[]): Promise<number> {
    const [clock, to] = [yard.app.get(Clock), from + 1];
    const on = <T>(offset: number, work: () => Promise<T>) =>
      clock.at(`${yard.day(offset)}T12:00:00.000Z`, work);
    const input = jobInput(yard.storeId, yard.day, { reference, from, to });
    const { id } = await on(from, () => yard.app.get(JobsService).create(NORA, input));
    await on(from, () => yard.app.get(Reservations).reserve(NORA, id));
    await on(from, () => yard.app.get(HandOuts).handOut(NORA, id, { tag: TAG }));
    for (const [place, number] of lifts.entries()) {
      const counted = { onDay: yard.day(from + place), lifts: number };
      await on(to, () => yard.app.get(Lifts).count(OLE, id, counted));
    }
    const remarks = `seen after ${reference}`;
    await on(to, () => yard.app.get(Returns).bringBack(OLE, id, { tag: TAG, condition: 'good', remarks }));
    return id;
  }
  const inspect = async (who: GearYard['crew'], differences: object) => {
    const record = { outcome: 'fit', ...differences };
    return (await who.post(`/api/items/${itemId}/inspections`).send(record).expect(201)).body;
  };
  /** A check of the item that arrives at noon of a day. */
  const check = (received: number, checkedAt: string) =>
    yard.app.get(Clock).at(`${yard.day(received)}T12:00:00.000Z`, () => {
      const answers = checkAnswers(yard, 'panelLifter');
      return yard.app.get(ChecksService).record(OLE, itemId, { checkedAt, offsetMinutes: 0, answers });
    });
  const traceOf = async (id: number) => (await yard.crew.get(`/api/defects/${id}/trace`).expect(200)).body;
  const report = async (id: number, differences: object = {}) => {
    const defect = { severity: 'immediateDanger', description: 'jaw cracked', ...differences };
    await yard.crew.post(`/api/items/${id}/defects`).send(defect).expect(201);
    const defects = (await yard.crew.get(`/api/items/${id}/defects`).expect(200)).body;
    return Math.max(...defects.map((each: { id: number }) => each.id));
  };

  beforeAll(async () => {
    yard = await startGearYard(engine);
    itemId = (await yard.gear(TAG, { examinedDaysAgo: 20 })).id;
    jobs.push(await job('TR-A', -12, [5]));
    await inspect(yard.examiner, { type: 'thoroughExamination', doneOn: yard.day(-9), reportNumber: 'R-9' });
    jobs.push(await job('TR-B', -8, [7]), await job('TR-C', -6, [11, 13]));
    await check(-6, `${yard.day(-6)}T10:00:00.000Z`);
    // Its clock is two days behind: it is on record, and vouches for nothing.
    await check(-5, `${yard.day(-7)}T10:00:00.000Z`);
    jobs.push(await job('TR-D', -3, [17, 0]));
    // A record that was corrected counts no more: this inspection was done a week earlier than first written.
    const interim = { type: 'interimInspection', doneBy: 'A. Inspector' };
    await inspect(yard.storeman, { ...interim, doneOn: yard.day(-2) });
    const records = (await yard.crew.get(`/api/items/${itemId}/inspections`).expect(200)).body;
    const wrong = records.find(({ type }: { type: string }) => type === 'interimInspection');
    await inspect(yard.storeman, { ...interim, doneOn: yard.day(-10), supersedesId: wrong.id });
  });
  afterAll(() => yard.close());

  it('leads from a defect over three jobs to the last good examination, with days, persons and lifts', async () => {
    const trace = await traceOf(await report(itemId));
    expect(trace.defect).toMatchObject({ tag: TAG, description: 'jaw cracked', reportedOn: yard.day(0) });
    expect(trace.defect.reportedBy).toMatch(/^Person \d+$/);
    expect(trace.lastExamined).toMatchObject({ doneOn: yard.day(-9), reportNumber: 'R-9' });
    expect(trace.lastGood).toMatchObject({ type: 'preUseCheck', doneOn: yard.day(-6) });
    const stay = { handedOutBy: NORA.name, broughtBackBy: OLE.name, state: 'back' };
    expect(trace.stays).toMatchObject([
      { ...stay, jobReference: 'TR-B', from: yard.day(-8), through: yard.day(-7), sinceLastGood: false },
      {
        ...stay,
        jobReference: 'TR-C',
        from: yard.day(-6),
        sinceLastGood: true,
        returnRemarks: 'seen after TR-C',
      },
      { ...stay, jobReference: 'TR-D', from: yard.day(-3), through: yard.day(-2), sinceLastGood: true },
    ]);
    expect(trace.stays.map(({ records }: { records: unknown[] }) => records.length)).toEqual([0, 2, 0]);
    const [, { records }] = trace.stays;
    expect(records).toMatchObject([{ clockDoubtful: false }, { doneOn: yard.day(-5), clockDoubtful: true }]);
    expect([trace.lifts, trace.liftsSinceLastGood]).toEqual([7 + 11 + 13 + 17, 11 + 13 + 17]);
    const page = (await yard.crew.get(`/trace/defects/${trace.defect.id}`).expect(200)).text;
    for (const words of [
      'TR-B',
      'TR-C',
      'TR-D',
      'Nora Gill',
      '24 lifts',
      'report R-9',
      'by a clock in doubt',
    ])
      expect(page).toContain(words);
    expect(page).not.toContain('TR-A');
  });

  it('goes back to the first job where nothing was ever found good, and names what is not there', async () => {
    const fresh = await yard.newItem();
    const trace = await traceOf(await report(fresh.id));
    expect(trace).toMatchObject({ lastGood: null, lastExamined: null, stays: [], lifts: 0 });
    await yard.crew.get(`/trace/defects/${trace.defect.id}`).expect(200);
    await yard.crew.get('/api/defects/999999/trace').expect(404);
    await yard.crew.get('/trace/defects/0').expect(404);
    await yard.visitor().get(`/api/defects/${trace.defect.id}/trace`).expect(401);
  });

  it('takes an examination that found the defect for no good one, though it was done days before it was signed', async () => {
    const item = await yard.newItem();
    const { tag } = item;
    await yard.examiner
      .post(`/api/items/${item.id}/examinations`)
      .send(examination(tag, yard.day(0), { examinedOn: yard.day(-4) }))
      .expect(201);
    const last = { noEarlierExamination: false, lastExaminedOn: yard.day(-4) };
    const wear = { ...worn(yard.day(0), 30), ...last, examinedOn: yard.day(-2) };
    const found = examination(tag, yard.day(0), wear);
    await yard.examiner.post(`/api/items/${item.id}/examinations`).send(found).expect(201);
    // Out of the way of the jobs below.
    await yard.crew.post(`/api/items/${item.id}/quarantine`).send({ reason: 'worn' }).expect(201);
    const [defect] = (await yard.crew.get(`/api/items/${item.id}/defects`).expect(200)).body;
    const trace = await traceOf(defect.id);
    expect(trace.lastGood).toMatchObject({ type: 'thoroughExamination', doneOn: yard.day(-4) });
  });

  it('takes gear that came back late to have been away until then', async () => {
    const clock = yard.app.get(Clock);
    const { tag, id: late } = await yard.gear('TR-3');
    const job = await yard.job({ from: 0, to: 2, reference: `TR-LATE-${engine}` });
    await yard.storeman.post(`/api/jobs/${job}/reservation`).expect(201);
    await yard.app.get(HandOuts).handOut(NORA, job, { tag });
    const on = <T>(offset: number, work: () => Promise<T>) =>
      clock.at(`${yard.day(offset)}T12:00:00.000Z`, work);
    await on(4, () => yard.app.get(Lifts).count(OLE, job, { onDay: yard.day(4), lifts: 9 }));
    await on(5, () =>
      yard.app.get(Returns).bringBack(OLE, job, { tag, condition: 'damaged', remarks: 'bent' }),
    );
    const [defect] = (await yard.crew.get(`/api/items/${late}/defects`).expect(200)).body;
    const [stay] = (await traceOf(defect.id)).stays;
    expect(stay).toMatchObject({ from: yard.day(0), through: yard.day(5), liftDays: [{ lifts: 9 }] });
    const file = (await yard.crew.get(`/api/jobs/${job}/gear-file`).expect(200)).body;
    expect(file.items).toMatchObject([{ through: yard.day(5), defects: [{ description: 'bent' }] }]);
  });

  it('gives the complete gear file of a job', async () => {
    const file = (await yard.crew.get(`/api/jobs/${jobs[2]}/gear-file`).expect(200)).body;
    expect(file).toMatchObject({ reference: 'TR-C', lifts: [{ lifts: 11 }, { lifts: 13 }] });
    expect(file.items).toHaveLength(1);
    expect(file.items[0]).toMatchObject({
      tag: TAG,
      maker: 'Harrow Works',
      state: 'back',
      returnRemarks: 'seen after TR-C',
      markings: [{ value: '500', unit: 'kg' }],
      checks: [
        { doneOn: yard.day(-6), outcome: 'fit', clockDoubtful: false },
        { doneOn: yard.day(-5), clockDoubtful: true },
      ],
      defects: [],
      events: [],
    });
    const inForce = file.items[0].inspections as {
      type: string;
      doneOn: string;
      reportNumber: string | null;
    }[];
    expect(inForce.map(({ type, doneOn }) => `${type} ${doneOn}`)).toEqual([
      `interimInspection ${yard.day(-10)}`,
      `thoroughExamination ${yard.day(-9)}`,
    ]);
    expect(inForce[1]?.reportNumber).toBe('R-9');
    const page = (await yard.crew.get(`/jobs/${jobs[2]}/gear-file`).expect(200)).text;
    for (const words of ['Inspections in force', 'report R-9', 'seen after TR-C'])
      expect(page).toContain(words);
    await yard.crew.get('/api/jobs/999999/gear-file').expect(404);
  });

  it('holds in the gear file what was found and what happened on the days of the job', async () => {
    const { tag } = await yard.gear('TR-2');
    const id = await yard.job({ from: 0, to: 2 });
    await yard.storeman.post(`/api/jobs/${id}/reservation`).expect(201);
    const [row] = (await yard.crew.get(`/api/jobs/${id}/booking`).expect(200)).body.items;
    await yard.storeman.post(`/api/jobs/${id}/hand-outs`).send({ tag }).expect(201);
    const dropped = { type: 'dropped', happenedOn: yard.day(0), remarks: 'off the bar' };
    await yard.crew.post(`/api/jobs/${id}/events`).send(dropped).expect(201);
    await yard.storeman
      .post(`/api/jobs/${id}/returns`)
      .send({ tag, condition: 'damaged', remarks: 'jaw bent' })
      .expect(201);
    const file = (await yard.crew.get(`/api/jobs/${id}/gear-file`).expect(200)).body;
    expect(row.tag).toBe(tag);
    expect(file.items).toMatchObject([
      { tag, returnRemarks: 'Damaged: jaw bent', events: [dropped], defects: [{ description: 'jaw bent' }] },
    ]);
  });
});
