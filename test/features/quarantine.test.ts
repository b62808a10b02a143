import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ENGINES } from '../support/engines.js';
import { startGearYard, type GearYard } from '../support/gear-yard.js';
import { expectWholeLedger } from '../support/invariants.js';

describe.each(ENGINES)('what waits in quarantine on %s', (engine) => {
  let yard: GearYard;
  beforeAll(async () => void (yard = await startGearYard(engine)));
  afterAll(() => yard.close());

  const waiting = async (tag: string) =>
    (await yard.crew.get('/api/quarantine').expect(200)).body.find(
      (item: { tag: string }) => item.tag === tag,
    );
  const act = (who: GearYard['crew'], id: number, path: string, body: object) =>
    who.post(`/api/items/${id}/${path}`).send(body);

  it('says since when, why, reported by whom, and who may release it', async () => {
    const { id } = await yard.gear('QA-1');
    const job = await yard.job({ from: 3, to: 5 });
    await yard.storeman.post(`/api/jobs/${job}/reservation`).expect(201);
    const danger = { severity: 'immediateDanger', description: 'jaw cracked' };
    await act(yard.examiner, id, 'defects', danger).expect(201);
    const item = await waiting('QA-1');
    expect(item).toMatchObject({
      condition: 'quarantined',
      since: yard.day(0),
      reason: 'jaw cracked',
      storeName: 'Yard',
      openDefects: [danger],
      jobs: [{ jobId: job, from: yard.day(3), to: yard.day(5), out: false }],
    });
    expect(item.mayExamine).toHaveLength(1);
    expect(item.mayExamine).not.toContain(item.reportedBy);
    // A second competent person who reports a danger on it may not release it either.
    await act(yard.secondExaminer, id, 'defects', danger).expect(201);
    expect((await waiting('QA-1')).mayExamine).toEqual([]);
    const page = (await yard.examiner.get('/quarantine').expect(200)).text;
    expect(page).toContain('Nobody on the list of people may');
    expect(page).toContain('In the quarantine place of Yard.');
    await yard.visitor().get('/api/quarantine').expect(401);
  });

  it('tells two competent persons of one name apart', async () => {
    const { id, tag } = await yard.gear('QE-1');
    await act(yard.examiner, id, 'quarantine', { reason: 'bent' }).expect(201);
    const { reportedBy: name } = await waiting(tag);
    const account = { signInName: `namesake.${engine}`, password: 'a password of some length' };
    await yard.manager
      .post('/api/people')
      .send({ ...account, name, roles: ['competentPerson'] })
      .expect(201);
    const namesake = yard.visitor();
    await namesake.post('/api/session').send(account).expect(204);
    const seenBy = async (who: typeof namesake) => {
      const { body } = await who.get('/api/quarantine').expect(200);
      const { text } = await who.get('/quarantine').expect(200);
      const item = body.find((each: { tag: string }) => each.tag === tag);
      const steps = ['examination', 'inspection'].map((step) =>
        text.includes(`href="/register/${id}/${step}"`),
      );
      return [item.youMayExamine, ...steps];
    };
    expect((await waiting(tag)).mayExamine).toContain(name);
    expect(await seenBy(namesake)).toEqual([true, true, true]);
    expect(await seenBy(yard.examiner)).toEqual([false, false, false]);
    expect(await seenBy(yard.crew)).toEqual([false, false, false]);
  });

  it('follows repair, examination and release', async () => {
    const { id } = await yard.gear('QB-1');
    await act(yard.crew, id, 'quarantine', { reason: 'bent' }).expect(201);
    await act(yard.storeman, id, 'repair', { reason: 'straighten the jaw' }).expect(201);
    expect(await waiting('QB-1')).toMatchObject({ condition: 'underRepair', reason: 'straighten the jaw' });
    expect((await yard.crew.get('/quarantine').expect(200)).text).toContain('its repair, then a thorough');
    const examination = {
      type: 'thoroughExamination',
      doneOn: yard.day(0),
      outcome: 'fit',
      reportNumber: 'R-Q',
    };
    await act(yard.examiner, id, 'inspections', { ...examination, release: true }).expect(201);
    expect(await waiting('QB-1')).toBeUndefined();
  });

  it('lists nothing that is scrapped, and nothing brings it back', async () => {
    const { id } = await yard.newItem({ tag: 'QC-1', batch: 'Q 9' });
    await act(yard.crew, id, 'quarantine', { reason: 'bent' }).expect(201);
    const scrap = { reason: 'bent', howMadeUnusable: 'cut through' };
    await act(yard.examiner, id, 'scrap', scrap).expect(201);
    expect(await waiting('QC-1')).toBeUndefined();
    const entries = await expectWholeLedger(yard.app);
    const batch = { maker: 'Harrow Works', reason: 'recall' };
    await yard.manager.post('/api/trace/batches/Q%209/quarantine').send(batch).expect(409);
    await act(yard.crew, id, 'events', { type: 'dropped', happenedOn: yard.day(0) }).expect(409);
    await yard.storeman.patch(`/api/items/${id}`).set('if-match', '"v3"').send({ batch: 'Q 10' }).expect(409);
    expect((await yard.crew.get(`/api/items/${id}`).expect(200)).body.condition).toBe('scrapped');
    expect(await expectWholeLedger(yard.app)).toBe(entries);
  });

  it('is not ended by lifts, by a shock, by a batch action or by a change of the batch', async () => {
    const { id, tag } = await yard.gear('QD-1');
    const job = await yard.job({ from: 0, to: 4 });
    await yard.storeman.post(`/api/jobs/${job}/reservation`).expect(201);
    await yard.storeman.post(`/api/jobs/${job}/hand-outs`).send({ tag }).expect(201);
    await act(yard.crew, id, 'quarantine', { reason: 'bent' }).expect(201);
    expect((await yard.crew.get('/quarantine').expect(200)).text).toContain('Still out on job');
    await yard.crew
      .post(`/api/jobs/${job}/lifts`)
      .send({ onDay: yard.day(0), lifts: 0 })
      .expect(201);
    const dropped = { type: 'dropped', happenedOn: yard.day(0) };
    await yard.crew.post(`/api/jobs/${job}/events`).send(dropped).expect(201);
    const { headers } = await yard.crew.get(`/api/items/${id}`).expect(200);
    await yard.storeman
      .patch(`/api/items/${id}`)
      .set('if-match', String(headers['etag']))
      .send({ batch: 'Q 11' })
      .expect(200);
    const batch = { maker: 'Harrow Works', reason: 'recall' };
    await yard.manager.post('/api/trace/batches/Q%2011/quarantine').send(batch).expect(409);
    expect(await waiting('QD-1')).toMatchObject({ condition: 'quarantined', reason: 'bent' });
  });
});
