import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { ENGINES } from '../support/engines.js';
import { startGearYard, type GearYard } from '../support/gear-yard.js';
import { hostileClient, type HostileClient, type RawAnswer } from '../support/hostile-client.js';
import { expectNoDoubleBooking, expectWholeLedger } from '../support/invariants.js';

const ROUNDS = 5;

describe.each(ENGINES)('two storemen at once on %s', (engine) => {
  let yard: GearYard;
  let one: HostileClient;
  let two: HostileClient;

  beforeAll(async () => {
    yard = await startGearYard(engine);
    one = await hostileClient(yard.app, ['storeman']);
    two = await hostileClient(yard.app, ['storeman']);
  });
  afterAll(() => yard.close());
  afterEach(async () => {
    await expectNoDoubleBooking(yard.app);
    expect(await expectWholeLedger(yard.app)).toBeGreaterThan(0);
  });

  const statuses = async (...answers: Promise<RawAnswer>[]) =>
    (await Promise.all(answers)).map(({ status }) => status).sort((left, right) => left - right);
  /** Days of its own for each round, so that rounds do not meet. */
  const days = (round: number) => ({ from: 10 + round * 3, to: 11 + round * 3 });
  const statesOf = async (job: number): Promise<string[]> => {
    const { body } = await yard.storeman.get(`/api/jobs/${job}/booking`).expect(200);
    return (body.items as { state: string }[]).map(({ state }) => state).sort();
  };

  it('reserve the last item for two jobs: one gets it', async () => {
    await yard.gear('PL-LAST');
    for (let round = 0; round < ROUNDS; round += 1) {
      const jobs = [await yard.job(days(round)), await yard.job(days(round))] as const;
      const answers = await statuses(
        one.json('POST', `/api/jobs/${jobs[0]}/reservation`, {}),
        two.json('POST', `/api/jobs/${jobs[1]}/reservation`, {}),
      );
      expect(answers).toEqual([201, 409]);
      expect([...(await statesOf(jobs[0])), ...(await statesOf(jobs[1]))]).toEqual(['reserved']);
    }
  });

  it('hand out one item twice: it goes out once', async () => {
    await yard.gear('PL-TWICE', { rating: ['700', 'kg'] });
    const job = await yard.job({ from: 0, to: 1, massKg: '650' });
    await yard.storeman.post(`/api/jobs/${job}/reservation`).expect(201);
    const rival = await yard.job({ from: 1, to: 3, massKg: '650' });
    const handOut = (client: HostileClient, id: number) =>
      client.json('POST', `/api/jobs/${id}/hand-outs`, { tag: 'PL-TWICE' });
    expect(await statuses(handOut(one, job), handOut(two, job), handOut(two, rival))).toEqual([
      201, 409, 409,
    ]);
    expect(await statesOf(job)).toEqual(['out']);
    const back = (client: HostileClient) =>
      client.json('POST', `/api/jobs/${job}/returns`, { tag: 'PL-TWICE', condition: 'good' });
    expect(await statuses(back(one), back(two))).toEqual([201, 409]);
  });

  it('edit one item from one version: the second is told', async () => {
    const item = await yard.newItem();
    const edit = (client: HostileClient, notes: string) =>
      client.json('PATCH', `/api/items/${item.id}`, { notes }, { 'if-match': '"v1"' });
    expect(await statuses(edit(one, 'one'), edit(two, 'two'))).toEqual([200, 412]);
    expect((await yard.storeman.get(`/api/items/${item.id}`).expect(200)).body.version).toBe(2);
  });

  it('register one serial number twice: it is there once', async () => {
    const item = {
      kind: 'panelLifter',
      storeId: yard.storeId,
      maker: 'Harrow Works',
      serial: 'TWIN 77',
      markings: [],
    };
    const marked = { ...item, markings: [{ measure: 'workingLoadLimit', value: '500', unit: 'kg' }] };
    const register = (client: HostileClient, tag: string) =>
      client.json('POST', '/api/items', { ...marked, tag });
    expect(await statuses(register(one, 'TW-1'), register(two, 'TW-2'))).toEqual([201, 409]);
  });

  it('cancel a job while its gear is handed out: never a cancelled job with gear out', async () => {
    await yard.gear('PL-CANCEL', { rating: ['900', 'kg'] });
    for (let round = 0; round < ROUNDS; round += 1) {
      const job = await yard.job({ ...days(round + 40), massKg: '800' });
      await yard.storeman.post(`/api/jobs/${job}/reservation`).expect(201);
      const answers = await statuses(
        one.json('POST', `/api/jobs/${job}/cancellation`, {}, { 'if-match': '"v1"' }),
        two.json('POST', `/api/jobs/${job}/hand-outs`, { tag: 'PL-CANCEL' }),
      );
      expect([
        [200, 409],
        [201, 409],
        [201, 412],
      ]).toContainEqual(answers);
      const { cancelled } = (await yard.storeman.get(`/api/jobs/${job}`).expect(200)).body;
      const states = await statesOf(job);
      expect(cancelled ? states.includes('out') : !states.includes('out'), `round ${round}`).toBe(false);
      if (!cancelled)
        await yard.storeman.post(`/api/jobs/${job}/returns`).send({ tag: 'PL-CANCEL', condition: 'good' });
    }
  });

  it('quarantine an item while it is reserved: it is not handed out', async () => {
    for (let round = 0; round < ROUNDS; round += 1) {
      const tag = `PL-Q${round}`;
      const { id } = await yard.gear(tag, { rating: ['2000', 'kg'] });
      const job = await yard.job({ ...days(round + 60), massKg: '1900' });
      const answers = await statuses(
        one.json('POST', `/api/jobs/${job}/reservation`, {}),
        two.json('POST', `/api/items/${id}/quarantine`, { reason: 'stitching cut' }),
      );
      expect([
        [201, 201],
        [201, 409],
      ]).toContainEqual(answers);
      const handOut = await one.json('POST', `/api/jobs/${job}/hand-outs`, { tag });
      expect(handOut.status, handOut.text).toBe(409);
      const { body } = await yard.storeman.get(`/api/items/${id}`).expect(200);
      expect(body.condition).toBe('quarantined');
    }
  });
});
