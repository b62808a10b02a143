import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Clock } from '../../src/clock.js';
import { Lifts } from '../../src/custody/lifts.service.js';
import { Returns } from '../../src/custody/returns.service.js';
import { GearFacts } from '../../src/planner/gear-facts.service.js';
import { Reads } from '../../src/storage/reads.js';
import { ENGINES } from '../support/engines.js';
import { startGearYard, type GearYard } from '../support/gear-yard.js';
import { expectWholeLedger } from '../support/invariants.js';

describe.each(ENGINES)('use of gear on site on %s', (engine) => {
  let yard: GearYard;
  beforeAll(async () => void (yard = await startGearYard(engine)));
  afterAll(() => yard.close());

  /** A job under the rules of Australia, which count the lifts of slings, with one sling and one strap out since today. */
  async function jobWithGearOut(
    sling: string,
    strap: string,
  ): Promise<{ id: number; sling: number; strap: number }> {
    const items = [
      await yard.gear(sling, { kind: 'sling', rating: ['5', 't'] }),
      await yard.gear(strap, { kind: 'ratchetStrap', rating: ['2500', 'daN'] }),
    ];
    const added = [
      {
        label: 'Legs',
        kind: 'sling',
        duty: 'lifting',
        quantity: 1,
        rating: { value: '1', unit: 't' },
        reason: 'in this test',
      },
      {
        label: 'Ties',
        kind: 'ratchetStrap',
        duty: 'lashing',
        quantity: 1,
        rating: { value: '1000', unit: 'daN' },
        reason: 'in this test',
      },
    ];
    const id = await yard.job({ only: [], from: 0, to: 20 });
    const { headers } = await yard.storeman.get(`/api/jobs/${id}`).expect(200);
    await yard.storeman
      .patch(`/api/jobs/${id}`)
      .set('if-match', String(headers['etag']))
      .send({ scheme: 'au', addedLines: added })
      .expect(200);
    await yard.storeman.post(`/api/jobs/${id}/reservation`).expect(201);
    for (const tag of [sling, strap])
      await yard.storeman.post(`/api/jobs/${id}/hand-outs`).send({ tag }).expect(201);
    return { id, sling: items[0]?.id ?? 0, strap: items[1]?.id ?? 0 };
  }

  const record = (id: number, differences: object) =>
    yard.examiner
      .post(`/api/items/${id}/inspections`)
      .send({ outcome: 'fit', ...differences })
      .expect(201);
  const count = (id: number, onDay: string, lifts: number) =>
    yard.crew.post(`/api/jobs/${id}/lifts`).send({ onDay, lifts });
  const unfit = async (id: number) =>
    (await yard.storeman.get(`/api/jobs/${id}/booking`).expect(200)).body.unfit.map(
      ({ item, refusals }: { item: { tag: string }; refusals: { code: string; has?: string }[] }) =>
        `${item.tag} ${refusals.map(({ code, has }) => `${code} ${has ?? ''}`.trim()).join(' ')}`,
    );

  it('counts lifts by day, the latest count of a day, and only for days of the job that have been', async () => {
    const { id } = await jobWithGearOut('SU-1', 'SU-2');
    await count(id, yard.day(0), 30).expect(201);
    const { body } = await count(id, yard.day(0), 12).expect(201);
    expect(body).toMatchObject({ total: 12, days: [{ onDay: yard.day(0), lifts: 12 }] });
    for (const day of [yard.day(-1), yard.day(1), yard.day(21)]) {
      expect((await count(id, day, 1).expect(400)).body.errors[0].field).toBe('onDay');
    }
    await count(id, yard.day(0), 2001).expect(400);
    await count(id, yard.day(0), 1.5).expect(400);
    await yard.examiner
      .post(`/api/jobs/${id}/lifts`)
      .send({ onDay: yard.day(0), lifts: 1 })
      .expect(403);
    const planned = await yard.job({ from: 0, to: 3 });
    await count(planned, yard.day(0), 1).expect(409);
    await expectWholeLedger(yard.app);
  });

  it('counts the lifts of gear that is late, on each day that any of it was out, and after all of it is back', async () => {
    const { id, sling, strap } = await jobWithGearOut('SU-14', 'SU-15');
    const person = { id: null, name: 'Nora Gill', roles: ['storeman' as const] };
    const on = (offset: number, onDay: number, lifts: number) =>
      yard.app
        .get(Clock)
        .at(`${yard.day(offset)}T12:00:00.000Z`, () =>
          yard.app.get(Lifts).count(person, id, { onDay: yard.day(onDay), lifts }),
        );
    const back = (offset: number, tag: string) =>
      yard.app
        .get(Clock)
        .at(`${yard.day(offset)}T12:00:00.000Z`, () =>
          yard.app.get(Returns).bringBack(person, id, { tag, condition: 'good' }),
        );
    expect(await on(22, 22, 700)).toMatchObject({ total: 700 });
    await back(22, 'SU-15');
    await back(23, 'SU-14');
    expect(await on(24, 23, 100)).toMatchObject({ total: 800 });
    const [gear] = await yard.app
      .get(GearFacts)
      .load(yard.app.get(Reads).manager, { itemIds: [sling] }, yard.day(24));
    expect(gear?.lifts).toEqual([
      { on: yard.day(22), lifts: 700 },
      { on: yard.day(23), lifts: 100 },
    ]);
    const [other] = await yard.app
      .get(GearFacts)
      .load(yard.app.get(Reads).manager, { itemIds: [strap] }, yard.day(24));
    expect(other?.lifts).toEqual([{ on: yard.day(22), lifts: 700 }]);
    expect([gear?.lastAwayOn, other?.lastAwayOn]).toEqual([yard.day(23), yard.day(22)]);
    await expect(on(24, 24, 1)).rejects.toMatchObject({ code: 'bad_input' });
    const page = (await yard.crew.get(`/jobs/${id}/use`).expect(200)).text;
    expect(page).toContain('Count them');
  });

  it('flags a sling that has made its lifts, no sooner, and not by a count that was corrected', async () => {
    const { id, sling } = await jobWithGearOut('SU-3', 'SU-4');
    await count(id, yard.day(0), 799).expect(201);
    expect(await unfit(id)).toEqual([]);
    await count(id, yard.day(0), 800).expect(201);
    expect(await unfit(id)).toEqual(['SU-3 lifts_used_up 800']);
    const ledger = (await yard.manager.get('/ledger').expect(200)).text;
    expect(ledger).toContain('booking flagged');
    await count(id, yard.day(0), 790).expect(201);
    expect(await unfit(id)).toEqual([]);
    const item = (await yard.crew.get(`/api/items/${sling}`).expect(200)).body;
    expect(item.condition).toBe('inService');
  });

  it('records a shock for everything that lifted or lashed that day, in one change', async () => {
    const { id, sling, strap } = await jobWithGearOut('SU-5', 'SU-6');
    const dropped = { type: 'dropped', happenedOn: yard.day(0), remarks: 'panel fell on its edge' };
    const before = await expectWholeLedger(yard.app);
    const { body } = await yard.crew.post(`/api/jobs/${id}/events`).send(dropped).expect(201);
    expect(body.items.map(({ tag }: { tag: string }) => tag)).toEqual(['SU-5', 'SU-6']);
    expect(body.affectedJobs).toEqual([{ jobId: id, reference: expect.any(String) }]);
    // Two events, two flags and a line for the job.
    expect(await expectWholeLedger(yard.app)).toBe(before + 5);
    expect(await unfit(id)).toEqual(['SU-5 examine_after_event', 'SU-6 examine_after_event']);
    for (const item of [sling, strap]) {
      const events = (await yard.crew.get(`/api/items/${item}/events`).expect(200)).body;
      expect(events).toMatchObject([dropped]);
    }
  });

  it('records a shock for what is ticked only, and for nothing that was not out', async () => {
    const { id, sling, strap } = await jobWithGearOut('SU-7', 'SU-8');
    const other = await yard.gear('SU-9');
    const overloaded = { type: 'overloaded', happenedOn: yard.day(0) };
    const send = (body: object) => yard.crew.post(`/api/jobs/${id}/events`).send({ ...overloaded, ...body });
    await send({ itemIds: [other.id] }).expect(400);
    await send({ itemIds: [] }).expect(400);
    await send({ itemIds: [String(sling)] }).expect(400);
    await send({ happenedOn: yard.day(1) }).expect(400);
    await send({ happenedOn: yard.day(-1) }).expect(400);
    await send({ type: 'repaired' }).expect(400);
    await send({ itemIds: [strap] }).expect(201);
    expect(await unfit(id)).toEqual(['SU-8 examine_after_event']);
  });

  it('leaves what was scrapped as it is', async () => {
    const { id, sling, strap } = await jobWithGearOut('SU-10', 'SU-11');
    const scrap = { reason: 'torn', howMadeUnusable: 'cut through' };
    await yard.manager.post(`/api/items/${sling}/scrap`).send(scrap).expect(201);
    const dropped = { type: 'dropped', happenedOn: yard.day(0) };
    const { body } = await yard.crew.post(`/api/jobs/${id}/events`).send(dropped).expect(201);
    expect(body.items).toEqual([{ itemId: strap, tag: 'SU-11' }]);
    await yard.crew
      .post(`/api/jobs/${id}/events`)
      .send({ ...dropped, itemIds: [sling] })
      .expect(400);
  });

  it('says at the counter and on its page which lifter lay idle for a month where the rules ask, and refuses none', async () => {
    const lifter = await yard.gear('SU-16', { examinedDaysAgo: 80 });
    const job = await yard.job({ from: 0, to: 2 });
    const { headers } = await yard.storeman.get(`/api/jobs/${job}`).expect(200);
    await yard.storeman
      .patch(`/api/jobs/${job}`)
      .set('if-match', String(headers['etag']))
      .send({ scheme: 'us' })
      .expect(200);
    await record(lifter.id, { type: 'proofLoadTest', doneOn: yard.day(-80) });
    await yard.storeman.post(`/api/jobs/${job}/reservation`).expect(201);
    const counter = async () => (await yard.storeman.get(`/jobs/${job}/hand-out`).expect(200)).text;
    const words = 'Neither out nor inspected since';
    expect(await counter()).toContain(words);
    expect((await yard.crew.get(`/register/${lifter.id}`).expect(200)).text).not.toContain(words);
    await record(lifter.id, { type: 'interimInspection', doneOn: yard.day(-3) });
    expect(await counter()).not.toContain(words);
    await yard.storeman.post(`/api/jobs/${job}/hand-outs`).send({ tag: 'SU-16' }).expect(201);
    const [gear] = await yard.app
      .get(GearFacts)
      .load(yard.app.get(Reads).manager, { itemIds: [lifter.id] }, yard.day(1));
    expect(gear?.lastAwayOn).toBe(yard.day(1));
  });

  it('is told on pages without script', async () => {
    const { id, strap } = await jobWithGearOut('SU-12', 'SU-13');
    const sheet = (await yard.crew.get(`/jobs/${id}`).expect(200)).text;
    expect(sheet).toContain('Lifts made');
    const send = (path: string, fields: object) =>
      yard.crew.post(`/jobs/${id}/${path}`).type('form').send(fields);
    await send('lifts', { onDay: yard.day(0), lifts: '14' }).expect(303);
    expect((await send('lifts', { onDay: yard.day(0), lifts: 'many' }).expect(400)).text).toContain(
      'lifts-error',
    );
    const page = (await yard.crew.get(`/jobs/${id}/use`).expect(200)).text;
    expect(page).toContain('14 lifts in all');
    expect(page.match(/name="itemIds\[\]"[^>]*checked/g)).toHaveLength(2);
    const happened = { type: 'dropped', happenedOn: yard.day(0), 'itemIds[]': String(strap) };
    const answer = await send('events', happened).expect(303);
    expect((await yard.crew.get(String(answer.headers['location'])).expect(200)).text).toContain(
      'Recorded for 1 item',
    );
    await send('events', { type: 'dropped', happenedOn: yard.day(0) }).expect(400);
  });
});
