import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ENGINES } from '../support/engines.js';
import { startGearYard, type GearYard } from '../support/gear-yard.js';
import { expectNoDoubleBooking, expectWholeLedger } from '../support/invariants.js';

const REASON = 'weld fault, notice of the maker';

describe.each(ENGINES)("a maker's batch on %s", (engine) => {
  let yard: GearYard;
  beforeAll(async () => void (yard = await startGearYard(engine)));
  afterAll(() => yard.close());

  async function item(
    tag: string,
    batch: string,
    { maker = 'Harrow Works', kg = '500' } = {},
  ): Promise<number> {
    const markings = [{ measure: 'workingLoadLimit', value: kg, unit: 'kg' }];
    const { id } = await yard.newItem({ tag, batch, maker, markings });
    const examination = {
      type: 'thoroughExamination',
      doneOn: yard.day(-10),
      outcome: 'fit',
      reportNumber: tag,
    };
    await yard.examiner.post(`/api/items/${id}/inspections`).send(examination).expect(201);
    return id;
  }
  const quarantine = (batch: string, who = yard.storeman) =>
    who
      .post(`/api/trace/batches/${encodeURIComponent(batch)}/quarantine`)
      .send({ maker: 'Harrow Works', reason: REASON });
  const conditionOf = async (id: number) =>
    (await yard.crew.get(`/api/items/${id}`).expect(200)).body.condition;

  it('is entered, changed, found however it is written, and shown', async () => {
    const id = await item('BA-1', 'W 2207/b');
    await item('BA-2', 'w-2207/B');
    await item('BA-3', 'W2207/b');
    const found = await yard.crew.get('/api/items').query({ batch: 'W-2207/B' }).expect(200);
    expect(found.body.items.map(({ tag }: { tag: string }) => tag)).toEqual(['BA-1', 'BA-2']);
    const { body, headers } = await yard.crew.get(`/api/items/${id}`).expect(200);
    expect(body.batch).toBe('W 2207/b');
    const patch = (batch: unknown) =>
      yard.storeman.patch(`/api/items/${id}`).set('if-match', String(headers['etag'])).send({ batch });
    await patch('x'.repeat(61)).expect(400);
    await patch('---').expect(400);
    expect((await patch(null).expect(200)).body.batch).toBeNull();
  });

  it('goes into quarantine whole, once, and never what is scrapped', async () => {
    const [inService, second] = [await item('BB-1', 'B 1'), await item('BB-2', 'b-1')];
    const [quarantined, scrapped, other] = [
      await item('BB-3', 'B-1'),
      await item('BB-4', 'B-1'),
      await item('BB-5', 'B-1', { maker: 'Other Works' }),
    ];
    await yard.crew.post(`/api/items/${quarantined}/quarantine`).send({ reason: 'bent' }).expect(201);
    const scrap = { reason: 'torn', howMadeUnusable: 'cut through' };
    await yard.manager.post(`/api/items/${scrapped}/scrap`).send(scrap).expect(201);
    await quarantine('B 1', yard.crew).expect(403);
    const { body } = await quarantine('B 1').expect(200);
    expect(body).toEqual({
      quarantined: ['BB-1', 'BB-2'],
      alreadyOut: ['BB-3'],
      scrapped: ['BB-4'],
      affectedJobs: [],
    });
    for (const id of [inService, second, quarantined]) expect(await conditionOf(id)).toBe('quarantined');
    expect(await conditionOf(scrapped)).toBe('scrapped');
    expect(await conditionOf(other)).toBe('inService');
    const entries = await expectWholeLedger(yard.app);
    await quarantine('B 1').expect(409);
    expect(await expectWholeLedger(yard.app)).toBe(entries);
    await quarantine('B 77').expect(404);
    await quarantine('x'.repeat(61)).expect(404);
  });

  it('takes effect once when it is sent twice with one key', async () => {
    await item('BC-1', 'C 1');
    const send = () => quarantine('C 1').set('idempotency-key', '"batch-once"');
    const [first, second] = await Promise.all([send(), send()]);
    expect([first.status, second.status]).toEqual([200, 200]);
    expect(second.body).toEqual(first.body);
  });

  it('is not released by the one who quarantined it, whatever else they record', async () => {
    const id = await item('BD-1', 'D 1');
    await quarantine('D 1', yard.examiner).expect(200);
    const release = { type: 'thoroughExamination', doneOn: yard.day(0), outcome: 'fit', release: true };
    const sendAs = (who: typeof yard.examiner) =>
      who.post(`/api/items/${id}/inspections`).send({ ...release, reportNumber: 'R-D' });
    await yard.crew.post(`/api/items/${id}/defects`).send({ severity: 'observation', description: 'paint' });
    await sendAs(yard.examiner).expect(409);
    await quarantine('D 1', yard.secondExaminer).expect(409);
    await sendAs(yard.examiner).expect(409);
    await sendAs(yard.secondExaminer).expect(201);
    expect(await conditionOf(id)).toBe('inService');
  });

  it('flags the jobs that count on it, and tells them', async () => {
    await item('BE-1', 'E 1', { kg: '900' });
    const job = await yard.job({ from: 30, to: 32, massKg: '850' });
    await yard.storeman.post(`/api/jobs/${job}/reservation`).expect(201);
    const { body } = await quarantine('E 1').expect(200);
    expect(body.affectedJobs.map(({ jobId }: { jobId: number }) => jobId)).toEqual([job]);
    const booking = (await yard.crew.get(`/api/jobs/${job}/booking`).expect(200)).body;
    expect(booking.unfit[0].refusals.map(({ code }: { code: string }) => code)).toEqual(['quarantined']);
  });

  it('never leaves an item promised unseen when a reservation races with it', async () => {
    for (let round = 0; round < 4; round += 1) {
      const tag = `BF-${round}`;
      // The only lifter in service that carries so much.
      await item(tag, `F ${round}`, { kg: '900' });
      const job = await yard.job({ from: 40, to: 42, massKg: '850' });
      const [reserved, out] = await Promise.all([
        yard.storeman.post(`/api/jobs/${job}/reservation`),
        quarantine(`F ${round}`),
      ]);
      expect(out.status).toBe(200);
      const booking = (await yard.crew.get(`/api/jobs/${job}/booking`).expect(200)).body;
      const promised = booking.items.some((row: { tag: string }) => row.tag === tag);
      const flagged = booking.unfit.some(({ item: row }: { item: { tag: string } }) => row.tag === tag);
      const told = out.body.affectedJobs.some(({ jobId }: { jobId: number }) => jobId === job);
      // Whoever comes second sees the first: the reservation is refused the item, or the quarantine flags the job.
      expect([promised, flagged, told], `round ${round}, ${reserved.status}`).toEqual(
        promised ? [true, true, true] : [false, false, false],
      );
    }
    await expectNoDoubleBooking(yard.app);
    await expectWholeLedger(yard.app);
  });

  it('tells each store once however many items it keeps, and the notice leads to the batch', async () => {
    const maker = 'Brightwater & Sons';
    for (const tag of ['BI-1', 'BI-2']) await item(tag, 'I/1 <b>', { maker });
    const booked = await item('BI-3', 'I/1 <b>', { maker, kg: '1900' });
    await yard.newItem({ tag: 'BI-4', batch: 'i/1 <B>', maker, storeId: yard.farStoreId });
    const jobId = await yard.job({ from: 60, to: 62, massKg: '1850' });
    await yard.storeman.post(`/api/jobs/${jobId}/reservation`).expect(201);
    await yard.storeman
      .post(`/api/trace/batches/${encodeURIComponent('I/1 <b>')}/quarantine`)
      .send({ maker, reason: REASON })
      .expect(200);
    const open = async () =>
      (await yard.manager.get('/api/notices').expect(200)).body.filter(
        ({ batch }: { batch: { maker: string } | null }) => batch?.maker === maker,
      );
    const notices = await open();
    const same = {
      kind: 'batchQuarantined',
      itemId: null,
      tag: null,
      what: REASON,
      by: 'Person 1',
      jobId: null,
    };
    expect(notices).toMatchObject([
      { ...same, batch: { batch: 'I/1 <b>', items: 1 }, jobs: [] },
      { ...same, batch: { batch: 'I/1 <b>', items: 3 }, storeName: 'Yard', jobs: [{ jobId }] },
    ]);
    const { text } = await yard.storeman.get('/').expect(200);
    expect(text).toContain(
      'Batch I/1 &lt;b> of Brightwater &amp; Sons: the whole batch was taken out of service',
    );
    const address = /href="(\/trace\/batches\/I[^"]*)"/.exec(text)?.[1]?.replaceAll('&amp;', '&') ?? '';
    expect((await yard.storeman.get(address).expect(200)).text).toContain('BI-3');

    const [there, here] = notices;
    await yard.storeman.post(`/api/notices/${here.id}/settled`).expect(204);
    await yard.storeman.post(`/api/notices/${here.id}/settled`).expect(409);
    await yard.storeman.post(`/notices/${there.id}/settle`).type('form').send({}).expect(303);
    expect(await open()).toEqual([]);
    expect(await conditionOf(booked)).toBe('quarantined');
    await expectWholeLedger(yard.app);
  });

  it('is looked at and taken out of service on a page', async () => {
    await item('BG-1', 'G/1 <b>');
    await item('BG-2', 'H 1');
    await item('BG-3', 'H-1', { maker: 'Other Works' });
    const address = `/trace/batches/${encodeURIComponent('G/1 <b>')}`;
    const page = (await yard.storeman.get(address).expect(200)).text;
    expect(page).toContain('Quarantine 1 item');
    expect(page).toContain('G/1 &lt;b>');
    expect((await yard.crew.get(address).expect(200)).text).not.toContain('Quarantine 1 item');
    const send = (fields: object) => yard.storeman.post(address).type('form').send(fields);
    expect((await send({ maker: 'Harrow Works' }).expect(400)).text).toContain('reason-error');
    const done = await send({ maker: 'Harrow Works', reason: REASON }).expect(303);
    expect((await yard.storeman.get(String(done.headers['location'])).expect(200)).text).toContain(
      '0 of them in service',
    );
    const choose = (await yard.storeman.get('/trace/batches/h-1').expect(200)).text;
    expect(choose).toContain('Several makers');
    await yard.storeman.get('/trace/batches/none').expect(404);
  });

  it('comes and goes with the list of gear', async () => {
    await item('BH-1', 'J 1');
    const { text } = await yard.storeman.get('/api/register/export.csv').expect(200);
    const [headings = '', ...rows] = text.split('\r\n');
    const place = headings.replace('\ufeff', '').split(',').indexOf('Batch');
    expect(rows.find((row) => row.startsWith('BH-1,'))?.split(',')[place]).toBe('J 1');
  });
});
