import type TestAgent from 'supertest/lib/agent.js';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { Clock } from '../../src/clock.js';
import { ChecksService } from '../../src/checks/checks.service.js';
import { CommitmentsService } from '../../src/custody/commitments.service.js';
import { Ledger } from '../../src/ledger/ledger.service.js';
import { SYSTEM_ACTOR } from '../../src/people/actor.js';
import { Reads } from '../../src/storage/reads.js';
import { checkAnswers } from '../support/check-answers.js';
import { ENGINES } from '../support/engines.js';
import { jobInput, startGearYard, type GearYard } from '../support/gear-yard.js';
import { promise } from '../support/promise.js';

const danger = 'stitching';

describe.each(ENGINES)('checks before use on %s', (engine) => {
  let yard: GearYard;
  beforeAll(async () => void (yard = await startGearYard(engine)));
  afterAll(() => yard.close());

  let straps = 0;
  const strap = () => yard.gear(`RS-${(straps += 1)}`, { kind: 'ratchetStrap', rating: ['2500', 'daN'] });
  const body = (differences: object = {}, bad: readonly string[] = []) => ({
    checkedAt: yard.app.get(Clock).now(),
    offsetMinutes: 60,
    answers: checkAnswers(yard, 'ratchetStrap', bad),
    ...differences,
  });
  const check = (
    id: number,
    bad: readonly string[] = [],
    differences: object = {},
    who: TestAgent = yard.crew,
  ) => who.post(`/api/items/${id}/checks`).send(body(differences, bad));
  const read = async (id: number, what = '') =>
    (await yard.crew.get(`/api/items/${id}${what}`).expect(200)).body;
  const rows = async (table: string, id: number): Promise<number> => {
    const sql = `SELECT COUNT(*) AS n FROM ${table} WHERE item_id = $1`;
    const [row] = await yard.app.get(Reads).manager.query<{ n: number | string }[]>(sql, [id]);
    return Number(row?.n);
  };

  it('keeps a check passed, and changes nothing else', async () => {
    const { id } = await strap();
    const { version } = await read(id);
    const { body: answer } = await check(id).expect(201);
    expect(answer).toMatchObject({
      outcome: 'fit',
      itemCondition: 'inService',
      countsFor: yard.day(0),
      clockDoubtful: false,
      defects: [],
      affectedJobs: [],
    });
    expect(answer).not.toHaveProperty('conflict');
    expect(await read(id)).toMatchObject({ condition: 'inService', version });
    const [inspection] = await read(id, '/inspections');
    expect(inspection).toMatchObject({
      id: answer.inspectionId,
      type: 'preUseCheck',
      doneOn: yard.day(0),
      outcome: 'fit',
    });
    expect(await rows('notice', id)).toBe(0);
  });

  it('quarantines a danger, flags its jobs, tells the store and leaves it out of every plan, in one change', async () => {
    const { id, tag } = await strap();
    const jobId = await promise(yard, {
      itemId: id,
      storeId: yard.storeId,
      reference: `D-${engine}`,
      from: yard.day(0),
      to: yard.day(3),
      state: 'out',
    });
    const { body: answer } = await check(id, [danger, 'label'], { jobId }).expect(201);
    expect(answer).toMatchObject({ outcome: 'unfit', itemCondition: 'quarantined' });
    expect(answer.defects.map(({ point }: { point: string }) => point).sort()).toEqual(['label', danger]);
    expect(answer.affectedJobs).toMatchObject([{ jobId, reference: `D-${engine}` }]);
    const [first, second] = await read(id, '/defects');
    expect([first.severity, second.severity]).toEqual(['immediateDanger', 'immediateDanger']);
    const entries = await yard.app.get(Ledger).newest(60);
    const [{ at } = { at: '' }] = entries.filter(({ detail }) => (detail as { tag?: string }).tag === tag);
    const actions = entries.filter((entry) => entry.at === at).map(({ action }) => action);
    expect(actions).toEqual(
      expect.arrayContaining([
        'check.recorded',
        'defect.reported',
        'item.quarantined',
        'notice.raised',
        'booking.flagged',
      ]),
    );
    const lashing = await yard.storeman
      .post('/api/jobs')
      .send(await lashingJob(yard))
      .expect(201);
    const { body: proposal } = await yard.storeman.get(`/api/jobs/${lashing.body.id}/proposal`).expect(200);
    const chosen = proposal.lines.flatMap((line: { chosen: { tag: string }[] }) =>
      line.chosen.map((item) => item.tag),
    );
    expect(chosen.length).toBeGreaterThan(0);
    expect(chosen).not.toContain(tag);
  });

  it('writes nothing at all of a check that cannot be kept', async () => {
    const { id } = await strap();
    const { version } = await read(id);
    const { answers } = body();
    const wrong: [object, string][] = [
      [{ answers: answers.slice(1) }, 'answers'],
      [{ answers: [...answers, answers[0]] }, 'answers[0]'],
      [{ answers: [] }, 'answers'],
      [{ jobId: 0 }, 'jobId'],
      [{ checkedAt: '2026-02-30T10:00:00Z' }, 'checkedAt'],
      [{ checkedAt: '2026-02-20T10:00' }, 'checkedAt'],
      [{ offsetMinutes: 1081 }, 'offsetMinutes'],
      [{ answers: answers.map((answer) => ({ ...answer, answer: 'fine' })) }, 'answers[0].answer'],
      [{ answers: answers.map((answer) => ({ ...answer, figures: { cut: '3' } })) }, 'answers[0].figures'],
      [
        { answers: answers.map((answer) => ({ ...answer, figures: { cut: { value: 'x', unit: 'mm' } } })) },
        'answers[0].figures.cut',
      ],
    ];
    for (const [differences, field] of wrong) {
      const { body: problem } = await check(id, [danger], differences).expect(400);
      expect(problem.errors.map((error: { field: string }) => error.field)).toContain(field);
    }
    await check(id, [danger], { jobId: 999_999 }).expect(404);
    for (const table of ['pre_use_check', 'defect', 'notice']) expect(await rows(table, id)).toBe(0);
    expect(await read(id)).toMatchObject({ condition: 'inService', version });
  });

  it('writes nothing at all when it breaks half-way', async () => {
    const { id } = await strap();
    const { version } = await read(id);
    const broken = vi
      .spyOn(yard.app.get(CommitmentsService), 'flag')
      .mockRejectedValueOnce(new Error('power cut'));
    await check(id, [danger]).expect(500);
    broken.mockRestore();
    for (const table of ['pre_use_check', 'defect', 'notice']) expect(await rows(table, id)).toBe(0);
    expect(await read(id)).toMatchObject({ condition: 'inService', version });
    expect(await yard.app.get(Ledger).verify()).not.toHaveProperty('fault');
  });

  // EN 12195-2, the limit of a tenth of the width as config/kinds/ratchetStrap.yaml cites it.
  it('lets the figure decide over the eye, in millimetres and in inches', async () => {
    const measured = (cut: string, unit: string) => ({
      answers: checkAnswers(yard, 'ratchetStrap').map((answer) =>
        answer.point === 'webbing'
          ? { ...answer, figures: { cut: { value: cut, unit }, width: { value: '50', unit: 'mm' } } }
          : answer,
      ),
    });
    const outcomes = [];
    for (const [cut, unit] of [
      ['5', 'mm'],
      ['5.1', 'mm'],
      ['0.196', 'in'],
      ['0.197', 'in'],
    ] as const)
      outcomes.push((await check((await strap()).id, [], measured(cut, unit)).expect(201)).body.outcome);
    expect(outcomes).toEqual(['fit', 'unfit', 'fit', 'unfit']);
  });

  it('keeps the check of two people at once on one item, and the danger that one of them found', async () => {
    const { id } = await strap();
    const answers = await Promise.all([
      check(id, [danger]),
      check(id, [], {}, yard.storeman),
      check(id, [danger], {}, yard.manager),
    ]);
    expect(answers.map(({ status }) => status)).toEqual([201, 201, 201]);
    expect(await read(id)).toMatchObject({ condition: 'quarantined' });
    expect(await rows('pre_use_check', id)).toBe(3);
    const quarantines = (await read(id, '/history')).filter(
      ({ action }: { action: string }) => action === 'item.quarantined',
    );
    expect(quarantines).toHaveLength(1);
    const conflicts = answers.map(({ body: answer }) => answer.conflict?.code);
    expect(conflicts.filter((code) => code === 'already_quarantined').length).toBeGreaterThanOrEqual(1);
  });

  it('says who quarantined it and when; a check passed does not bring it back', async () => {
    const { id } = await strap();
    await check(id, [danger]).expect(201);
    const { body: passed } = await check(id, [], {}, yard.storeman).expect(201);
    expect(passed).toMatchObject({ outcome: 'fit', itemCondition: 'quarantined' });
    expect(passed.conflict).toMatchObject({ code: 'already_quarantined', by: 'Person 2' });
    expect(passed.conflict.at).toMatch(/^\d{4}-.*Z$/);
    await yard.storeman.post(`/api/items/${id}/repair`).send({ reason: 'new webbing' }).expect(201);
    expect((await check(id).expect(201)).body.conflict).toMatchObject({
      code: 'under_repair',
      by: 'Person 1',
    });
    expect((await read(id)).condition).toBe('underRepair');
  });

  it('keeps a check for a job that the item is not on, and says so', async () => {
    const row = { storeId: yard.storeId, from: yard.day(0), to: yard.day(1) };
    const [one, two, three] = [await strap(), await strap(), await strap()];
    const left = await promise(yard, { ...row, itemId: one.id, reference: `L-${engine}`, state: 'back' });
    const onIt = await promise(yard, { ...row, itemId: two.id, reference: `R-${engine}` });
    expect((await check(one.id, [], { jobId: left }).expect(201)).body.conflict).toEqual({
      code: 'left_job',
    });
    expect((await check(three.id, [], { jobId: left }).expect(201)).body.conflict).toEqual({
      code: 'not_on_job',
    });
    expect((await check(two.id, [], { jobId: onIt }).expect(201)).body).not.toHaveProperty('conflict');
    expect(await rows('pre_use_check', three.id)).toBe(1);
  });

  it("counts for the day at the job's store, or at the item's own where there is no job", async () => {
    const island = {
      name: `Island ${engine}`,
      address: '1 Reef',
      scheme: 'gb',
      timeZone: 'Pacific/Kiritimati',
    };
    const { body: store } = await yard.manager.post('/api/stores').send(island).expect(201);
    const { id } = await strap();
    const row = {
      itemId: id,
      storeId: store.id,
      reference: `Z-${engine}`,
      from: '2026-11-20',
      to: '2026-12-31',
    };
    const jobId = await promise(yard, row);
    const checkedAt = '2026-11-30T12:00:00.000Z';
    const checked = (differences: object) =>
      yard.app.get(Clock).at(checkedAt, async () => {
        const input = { ...body(differences), checkedAt };
        return (await yard.app.get(ChecksService).record(SYSTEM_ACTOR, id, input)).countsFor;
      });
    // Kiritimati keeps UTC+14 all year by the IANA time zone database: the month has ended there.
    expect(await checked({ jobId })).toBe('2026-12-01');
    expect(await checked({})).toBe('2026-11-30');
    expect(await checked({ jobId, offsetMinutes: -600 })).toBe('2026-12-01');
  });

  it('takes effect once for the same key, however often it is sent', async () => {
    const { id } = await strap();
    const sent = body({}, [danger]);
    const send = () =>
      yard.crew.post(`/api/items/${id}/checks`).set('idempotency-key', `check-${engine}-${id}`).send(sent);
    const answers = await Promise.all([send(), send()]);
    answers.push(await send());
    expect(new Set(answers.map(({ body: answer }) => answer.inspectionId)).size).toBe(1);
    for (const table of ['pre_use_check', 'defect', 'notice']) expect(await rows(table, id)).toBe(1);
  });

  it('refuses to check what is scrapped, and a visitor', async () => {
    const { id } = await strap();
    await check(id, [], {}, yard.visitor()).expect(401);
    await yard.manager
      .post(`/api/items/${id}/scrap`)
      .send({ reason: 'cut', howMadeUnusable: 'burnt' })
      .expect(201);
    expect((await check(id).expect(409)).body.code).toBe('not_allowed_now');
    expect(await rows('pre_use_check', id)).toBe(0);
  });

  it("lets no crew member sign a competent person's form", async () => {
    const { id } = await strap();
    await check(id, [danger]).expect(201);
    const examination = { type: 'thoroughExamination', doneOn: yard.day(0), outcome: 'fit' };
    const scrap = { reason: 'x', howMadeUnusable: 'cut' };
    const attempts: [string, object][] = [
      [`/api/items/${id}/inspections`, examination],
      [`/api/items/${id}/inspections`, { ...examination, release: true }],
      [`/api/items/${id}/inspections`, { ...examination, type: 'proofLoadTest' }],
      [`/api/items/${id}/scrap`, scrap],
      [`/api/items/${id}/repair`, { reason: 'x' }],
      [`/register/${id}/inspection`, { ...examination, release: 'true' }],
      [`/register/${id}/scrap`, scrap],
    ];
    for (const [path, form] of attempts) await yard.crew.post(path).send(form).expect(403);
    await yard.crew.get(`/register/${id}/inspection`).expect(403);
    await yard.crew.get(`/register/${id}/scrap`).expect(403);
    await yard.crew.get(`/register/${id}/check`).expect(200);
    expect((await read(id)).condition).toBe('quarantined');
  });
});

/** A job that needs straps, and has more than enough of them fit and free. */
async function lashingJob(yard: GearYard): Promise<object> {
  for (let spare = 1; spare <= 6; spare += 1)
    await yard.gear(`SPARE-${spare}`, { kind: 'ratchetStrap', rating: ['2500', 'daN'] });
  return {
    ...jobInput(yard.storeId, yard.day, { only: ['strapsRoundWidth'] }),
    counts: { crews: 1, liftersInUse: 1, panelsOnWheels: 1, trucksUnloading: 0, personsAloft: 0 },
  };
}
