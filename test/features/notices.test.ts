import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Clock } from '../../src/clock.js';
import { checkAnswers, pointOf } from '../support/check-answers.js';
import { ENGINES } from '../support/engines.js';
import { startGearYard, type GearYard } from '../support/gear-yard.js';
import { promise } from '../support/promise.js';

describe.each(ENGINES)('notices on %s', (engine) => {
  let yard: GearYard;
  beforeAll(async () => void (yard = await startGearYard(engine)));
  afterAll(() => yard.close());

  let straps = 0;
  const strap = () => yard.gear(`NS-${(straps += 1)}`, { kind: 'ratchetStrap', rating: ['2500', 'daN'] });
  const check = (id: number, severity: 'immediateDanger' | 'observation', kind = 'ratchetStrap') =>
    yard.crew
      .post(`/api/items/${id}/checks`)
      .send({
        checkedAt: yard.app.get(Clock).now(),
        offsetMinutes: 0,
        answers: checkAnswers(yard, kind, [pointOf(yard, kind, severity)]),
      })
      .expect(201);
  const open = async (tag: string) => {
    const { body } = await yard.storeman.get('/api/notices').expect(200);
    return body.filter((notice: { tag: string }) => notice.tag === tag);
  };

  it('reach storeman and manager on their start page, with the jobs concerned, and nobody else', async () => {
    const { id, tag } = await strap();
    const reference = `N-${engine}`;
    const jobId = await promise(yard, {
      itemId: id,
      storeId: yard.storeId,
      reference,
      from: yard.day(0),
      to: yard.day(4),
    });
    await check(id, 'immediateDanger');
    expect(await open(tag)).toMatchObject([
      {
        kind: 'immediateDanger',
        itemId: id,
        storeName: 'Yard',
        by: 'Person 2',
        jobs: [{ jobId, reference }],
      },
    ]);
    for (const who of [yard.storeman, yard.manager]) {
      const { text } = await who.get('/').expect(200);
      expect(text).toContain(`${tag}: a danger was found`);
      expect(text).toContain(`href="/jobs/${jobId}"`);
    }
    expect((await yard.crew.get('/').expect(200)).text).not.toContain(tag);
    await yard.crew.get('/api/notices').expect(403);
  });

  it('come of a defect reported on its own form too, but of no observation there', async () => {
    const { id, tag } = await strap();
    const report = (defect: object) => yard.crew.post(`/api/items/${id}/defects`).send(defect).expect(201);
    await report({ severity: 'observation', description: 'muddy' });
    expect(await open(tag)).toEqual([]);
    await report({ severity: 'dangerByDate', description: 'wearing thin', lastDayOfUse: yard.day(5) });
    await report({ severity: 'immediateDanger', description: 'cut through' });
    expect(await open(tag)).toMatchObject([
      { kind: 'immediateDanger', what: 'cut through', lastDayOfUse: null },
      { kind: 'dangerByDate', what: 'wearing thin', lastDayOfUse: yard.day(5) },
    ]);
  });

  it('come of a check that found something to watch, which leaves the item in service', async () => {
    const { id, tag } = await yard.newItem({ kind: 'safetyLine', markings: [] });
    const { body } = await check(id, 'observation', 'safetyLine');
    expect(body).toMatchObject({ outcome: 'unfit', itemCondition: 'inService', affectedJobs: [] });
    expect(await open(tag)).toMatchObject([{ kind: 'observation' }]);
  });

  it('are settled when the item is released or scrapped', async () => {
    const [released, scrapped] = [await strap(), await strap()];
    for (const { id } of [released, scrapped]) await check(id, 'immediateDanger');
    const examination = { type: 'thoroughExamination', doneOn: yard.day(0), outcome: 'fit', release: true };
    await yard.examiner.post(`/api/items/${released.id}/inspections`).send(examination).expect(201);
    await yard.manager
      .post(`/api/items/${scrapped.id}/scrap`)
      .send({ reason: 'cut', howMadeUnusable: 'cut up' })
      .expect(201);
    expect(await open(released.tag)).toEqual([]);
    expect(await open(scrapped.tag)).toEqual([]);
    const { body: history } = await yard.crew.get(`/api/items/${released.id}/history`).expect(200);
    expect(history.map(({ action }: { action: string }) => action)).toContain('notice.settled');
  });

  it('are settled by hand once, by storeman or manager, and the item stays as it is', async () => {
    const { id, tag } = await strap();
    await check(id, 'immediateDanger');
    const [notice] = await open(tag);
    await yard.crew.post(`/api/notices/${notice.id}/settled`).expect(403);
    const answers = await Promise.all([
      yard.storeman.post(`/api/notices/${notice.id}/settled`),
      yard.manager.post(`/api/notices/${notice.id}/settled`),
    ]);
    expect(answers.map(({ status }) => status).sort()).toEqual([204, 409]);
    expect(await open(tag)).toEqual([]);
    expect((await yard.crew.get(`/api/items/${id}`).expect(200)).body.condition).toBe('quarantined');
    await yard.storeman.post('/api/notices/999999/settled').expect(404);
    await check(id, 'immediateDanger');
    const [again] = await open(tag);
    const settled = await yard.storeman.post(`/notices/${again.id}/settle`).type('form').send({}).expect(303);
    expect(settled.headers['location']).toBe('/');
    expect(await open(tag)).toEqual([]);
  });
});
