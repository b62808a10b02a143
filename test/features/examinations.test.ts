import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';
import type TestAgent from 'supertest/lib/agent.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Clock } from '../../src/clock.js';
import { addDays, addMonths } from '../../src/rules/calendar/day.js';
import { Reads } from '../../src/storage/reads.js';
import { UnitOfWork } from '../../src/storage/unit-of-work.js';
import { ENGINES } from '../support/engines.js';
import { CRACKED, examination, worn } from '../support/example-examination.js';
import { startGearServer, type GearServer } from '../support/gear-server.js';
import { expectWholeLedger } from '../support/invariants.js';
import { itemCalls } from '../support/item-calls.js';
import { promise } from '../support/promise.js';

const today = new Clock().today('Europe/London');
const yesterday = addDays(today, -1);
const year = today.slice(0, 4);

describe.each(ENGINES)('reports of thorough examination on %s', (engine) => {
  let server: GearServer;
  beforeAll(async () => void (server = await startGearServer(engine)));
  afterAll(() => server.close());

  const { act, read, actions } = itemCalls(() => server, {});
  const sign = (who: TestAgent, { id, tag }: { id: number; tag: string }, changes: object = {}) =>
    who.post(`/api/items/${id}/examinations`).send(examination(tag, today, changes));
  const errorsOf = async (item: { id: number; tag: string }, changes: object): Promise<string[]> => {
    const { body } = await sign(server.examiner, item, changes).expect(400);
    return body.errors.map(
      ({ field, message }: { field: string; message: string }) => `${field}: ${message}`,
    );
  };

  it('numbers twenty signed at once from one on, without a gap and none twice', async () => {
    const items: { id: number; tag: string }[] = [];
    for (let count = 0; count < 20; count += 1) items.push(await server.newItem());
    // Some of them fail in between: a number that was not used is not lost.
    const answers = await Promise.all(
      items.map((item, index) =>
        sign(
          index % 2 === 0 ? server.examiner : server.secondExaminer,
          item,
          index % 5 === 4 ? { release: true } : {},
        ),
      ),
    );
    const refused = answers.filter(({ status }) => status === 409);
    expect(refused).toHaveLength(4);
    const more = await Promise.all(
      refused.map((_, index) => sign(server.examiner, items[index * 5 + 4] ?? items[0]!)),
    );
    const numbers = [...answers, ...more]
      .filter(({ status }) => status === 201)
      .map(({ body }) => String(body.examination.number));
    const expected = Array.from(
      { length: 20 },
      (_, index) => `TE-${year}-${String(index + 1).padStart(4, '0')}`,
    );
    expect(numbers.sort()).toEqual(expected);
    await expectWholeLedger(server.app);
  });

  it('signs a report: the item is in date, the record carries the number, the latest day is worked out', async () => {
    const item = await server.newItem();
    const { body } = await sign(server.examiner, item, { examinedOn: yesterday }).expect(201);
    const { examination: report } = body;
    expect(report).toMatchObject({ outcome: 'fit', unaltered: true, supersedes: null, supersededBy: null });
    // LOLER 1998 (SI 1998/2307) reg 9(3)(a): an accessory for lifting, every 6 months.
    expect(report.particulars).toMatchObject({
      nextExaminationBy: addMonths(yesterday, 6),
      reportedOn: today,
      signer: { address: '9 Ropewalk' },
    });
    expect(report.particulars.examiner.name).toBe(report.particulars.signer.name);
    expect(body.item).toMatchObject({ currency: 'inDate', certificateOnFile: true });
    const [record] = (await server.crew.get(`/api/items/${item.id}/inspections`).expect(200)).body;
    expect(record).toMatchObject({
      reportNumber: report.number,
      examinationId: report.id,
      doneBy: report.particulars.examiner.name,
      nextDueOn: addMonths(yesterday, 6),
    });
    expect(await actions(item.id)).toEqual(['examination.signed', 'inspection.recorded', 'item.created']);
  });

  it('has a fingerprint that anyone can work out again, and that the ledger holds', async () => {
    const item = await server.newItem();
    const { body } = await sign(server.examiner, item).expect(201);
    const { number, itemId, madeAt, particulars, fingerprint, id } = body.examination;
    // RFC 8785 by the general-purpose library canonicalize, SHA-256 by Node.
    const text = canonicalize({ number, itemId, madeAt, particulars }) ?? '';
    expect(createHash('sha256').update(text).digest('hex')).toBe(fingerprint);
    const [line] = (await server.crew.get(`/api/items/${item.id}/history`).expect(200)).body;
    expect(line.detail).toMatchObject({ number, fingerprint, reportId: id });
  });

  it('is signed by a competent person for themselves only, who says that they did it', async () => {
    const item = await server.newItem();
    for (const who of [server.crew, server.storeman, server.manager]) {
      expect((await sign(who, item).expect(403)).body.code).toBe('not_your_role');
      await who.get(`/register/${item.id}/examination`).expect(403);
    }
    expect(await errorsOf(item, { declared: false })).toEqual([expect.stringContaining('declared: ')]);
    expect(await errorsOf(item, { examinerName: 'Someone Else' })).toEqual([
      expect.stringContaining('not a field of this request'),
    ]);
    expect(await actions(item.id)).toEqual(['item.created']);
  });

  it('names every paragraph that lacks something, and writes nothing then', async () => {
    const item = await server.newItem();
    const { body } = await server.examiner
      .post(`/api/items/${item.id}/examinations`)
      .send({ declared: true })
      .expect(400);
    const paragraphs = body.gaps.map(({ paragraph }: { paragraph: string }) => paragraph);
    expect([...new Set(paragraphs)]).toEqual([
      '1',
      '2',
      '3',
      '4',
      '5',
      '6(a)',
      '8(a)',
      '8(e)',
      '8(f)',
      '9',
      '10',
    ]);
    expect(await actions(item.id)).toEqual(['item.created']);
  });

  it('takes an earlier next day, never a later one', async () => {
    const item = await server.newItem();
    const limit = addMonths(today, 6);
    expect(await errorsOf(item, { nextExaminationBy: addDays(limit, 1) })).toEqual([
      expect.stringContaining('nextExaminationBy: paragraph 8(d): is later than the rules allow'),
    ]);
    const { body } = await sign(server.examiner, item, { nextExaminationBy: addDays(limit, -1) }).expect(201);
    expect(body.examination.particulars.nextExaminationBy).toBe(addDays(limit, -1));
  });

  it('is capped by the day of a defect, which the item keeps', async () => {
    const item = await server.newItem();
    const by = addDays(today, 20);
    expect(await errorsOf(item, { ...worn(today, 20), nextExaminationBy: addDays(by, 1) })).toHaveLength(1);
    const { body } = await sign(server.examiner, item, worn(today, 20)).expect(201);
    expect(body.examination.particulars.nextExaminationBy).toBe(by);
    expect(body.item).toMatchObject({ condition: 'inService', currency: 'dueSoon' });
    expect((await server.crew.get(`/api/items/${item.id}/due`)).body.defectDeadline).toBe(by);
    const again = await sign(server.secondExaminer, item).expect(201);
    expect(again.body.examination.particulars.nextExaminationBy).toBe(by);
  });

  it('quarantines what is a danger in the same change, and flags its jobs', async () => {
    const item = await server.newItem();
    const to = addDays(today, 9);
    const reference = `CRACKED-${engine}`;
    await promise(server, { itemId: item.id, storeId: server.storeId, reference, from: today, to });
    const { body } = await sign(server.examiner, item, CRACKED).expect(201);
    expect(body.item).toMatchObject({
      condition: 'quarantined',
      currency: 'outOfDate',
      certificateOnFile: false,
    });
    expect(body.affectedJobs).toEqual([expect.objectContaining({ reference })]);
    const [defect] = (await server.crew.get(`/api/items/${item.id}/defects`)).body;
    expect(defect).toMatchObject({ severity: 'immediateDanger', description: 'jaw: cracked at the root' });
  });

  it('releases by someone else than who reported, and not as a correction', async () => {
    const item = await server.newItem();
    const first = await sign(server.examiner, item, CRACKED).expect(201);
    const own = await sign(server.examiner, item, { release: true }).expect(409);
    expect(own.body.detail).toContain('another competent person');
    const supersedesId = first.body.examination.inspectionId;
    expect(await errorsOf(item, { release: true, supersedesId })).toEqual([
      expect.stringContaining('release: a correction releases nothing'),
    ]);
    expect((await read(item.id)).condition).toBe('quarantined');
    const { body } = await sign(server.secondExaminer, item, { release: true, ...worn(today, 40) }).expect(
      201,
    );
    expect(body.item).toMatchObject({ condition: 'inService', currency: 'inDate' });
    const defects = (await server.crew.get(`/api/items/${item.id}/defects`)).body;
    expect(
      defects.map(
        ({ closedByInspectionId }: { closedByInspectionId: number | null }) => closedByInspectionId,
      ),
    ).toEqual([null, body.examination.inspectionId]);
  });

  it('is corrected by a new report of the same examiner, and stays readable', async () => {
    const item = await server.newItem();
    const first = (await sign(server.examiner, item, worn(today, 40)).expect(201)).body.examination;
    const correction = { ...worn(today, 40), supersedesId: first.inspectionId, employerAddress: '5 Slipway' };
    const foreign = await sign(server.secondExaminer, item, correction).expect(409);
    expect(foreign.body.detail).toContain('a report of your own');
    const other = await server.newItem();
    expect(await errorsOf(other, correction)).toEqual([expect.stringContaining('not a record of this item')]);
    const second = (await sign(server.examiner, item, correction).expect(201)).body.examination;
    expect(second).toMatchObject({
      supersedes: { id: first.id, number: first.number },
      supersedesInspectionId: first.inspectionId,
    });
    const old = (await server.crew.get(`/api/examinations/${first.id}`).expect(200)).body;
    expect(old).toMatchObject({
      supersededBy: { id: second.id, number: second.number },
      particulars: { employerAddress: '4 Slipway' },
      fingerprint: first.fingerprint,
      unaltered: true,
    });
    await sign(server.examiner, item, correction).expect(409);
    const third = { ...correction, supersedesId: second.inspectionId };
    await sign(server.examiner, item, third).expect(201);
    // The same defect said again is one defect.
    expect((await server.crew.get(`/api/items/${item.id}/defects`)).body).toHaveLength(1);
    const page = await server.crew.get(`/examinations/${first.id}`).expect(200);
    expect(page.text).toContain('superseded');
    expect(page.text).toContain(second.number);
  });

  it('keeps its day, or a later one, where it released', async () => {
    const item = await server.newItem();
    await act(server.crew, item.id, 'quarantine', { reason: 'bent' }).expect(201);
    const { body } = await sign(server.examiner, item, { release: true }).expect(201);
    const earlier = { supersedesId: body.examination.inspectionId, examinedOn: yesterday };
    const refused = await sign(server.examiner, item, earlier).expect(409);
    expect(refused.body.detail).toContain(`released ${item.tag}`);
    expect((await read(item.id)).condition).toBe('inService');
  });

  it('is not corrected by a bare record', async () => {
    const item = await server.newItem();
    const { inspectionId } = (await sign(server.examiner, item).expect(201)).body.examination;
    const bare = { type: 'thoroughExamination', doneOn: today, outcome: 'fit', supersedesId: inspectionId };
    const refused = await act(server.examiner, item.id, 'inspections', bare).expect(409);
    expect(refused.body.detail).toContain('correct it by a new report');
  });

  it('is never changed or deleted, not even by statements of its own', async () => {
    const item = await server.newItem();
    const { id, inspectionId } = (await sign(server.examiner, item).expect(201)).body.examination;
    const before = await server.app
      .get(Reads)
      .manager.query('SELECT * FROM examination_report WHERE id = $1', [id]);
    for (const statement of [
      `UPDATE examination_report SET number = 'TE-1' WHERE id = ${id}`,
      `DELETE FROM examination_report WHERE id = ${id}`,
      `UPDATE inspection SET outcome = 'unfit' WHERE id = ${inspectionId}`,
      `DELETE FROM inspection WHERE id = ${inspectionId}`,
    ]) {
      const run = server.app.get(UnitOfWork).run((manager) => manager.query(statement));
      await expect(run).rejects.toThrow('append_only');
    }
    const after = await server.app
      .get(Reads)
      .manager.query('SELECT * FROM examination_report WHERE id = $1', [id]);
    expect(after).toEqual(before);
  });

  it('takes the certificate of another firm as a record with its number, without a report of ours', async () => {
    const item = await server.newItem();
    const certificate = {
      type: 'thoroughExamination',
      doneOn: yesterday,
      outcome: 'fit',
      doneBy: 'A. Body, Ropewalk Examinations',
      reportNumber: 'RE 7781',
      nextDueOn: addMonths(today, 3),
    };
    await act(server.examiner, item.id, 'inspections', certificate).expect(201);
    const [record] = (await server.crew.get(`/api/items/${item.id}/inspections`)).body;
    expect(record).toMatchObject({ reportNumber: 'RE 7781', examinationId: null });
    expect(await read(item.id)).toMatchObject({ currency: 'inDate', certificateOnFile: true });
  });

  it('gives nothing for a number that no report has', async () => {
    expect((await server.crew.get('/api/examinations/999999').expect(404)).body.code).toBe('not_found');
    await server.crew.get('/examinations/999999').expect(404);
    await server.visitor().get('/api/examinations/1').expect(401);
  });
});
