import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { createApp } from '../../src/web/create-app.js';
import { Clock } from '../../src/clock.js';
import { DueIndex } from '../../src/reminders/due-index/due-index.service.js';
import { SETTINGS, type Settings } from '../../src/settings.js';
import { Reads } from '../../src/storage/reads.js';
import { UnitOfWork } from '../../src/storage/unit-of-work.js';
import { expectWholeIndex, indexedDay, indexRows } from '../support/due-index-check.js';
import { ENGINES } from '../support/engines.js';
import { startGearYard, type GearYard } from '../support/gear-yard.js';
import { itemCalls } from '../support/item-calls.js';
import { seededRandom, type SeededRandom } from '../support/seeded-random.js';

const CHANGES = 60;

describe.each(ENGINES)('the index of due days through changes at once on %s', (engine) => {
  let yard: GearYard;
  beforeAll(async () => void (yard = await startGearYard(engine)));
  afterAll(() => yard.close());

  const { record, act } = itemCalls(() => yard, { type: 'thoroughExamination', outcome: 'fit' });
  const index = () => yard.app.get(DueIndex, { strict: false });

  /** Some change to an item, whether or not it is taken as the item stands. */
  async function change(id: number, random: SeededRandom): Promise<void> {
    const day = yard.day(-random.whole(0, 60));
    const changes: (() => PromiseLike<unknown>)[] = [
      () => record(yard.examiner, id, { doneOn: day }),
      () => record(yard.examiner, id, { doneOn: day, nextDueOn: yard.day(random.whole(1, 90)) }),
      () => record(yard.secondExaminer, id, { doneOn: yard.day(0), release: true }),
      () => record(yard.examiner, id, { doneOn: yard.day(0), outcome: 'unfit' }),
      () => act(yard.crew, id, 'events', { type: 'dropped', happenedOn: day }),
      () => act(yard.crew, id, 'quarantine', { reason: 'looks bent' }),
      () =>
        act(yard.crew, id, 'defects', {
          severity: 'dangerByDate',
          description: 'worn',
          lastDayOfUse: yard.day(random.whole(0, 40)),
        }),
      () => edit(id, { storeId: random.oneOf([yard.storeId, yard.farStoreId]) }),
      () => edit(id, { declarationOn: day, firstUsedOn: null }),
      () => edit(id, { writtenSchemes: [{ type: 'thoroughExamination', months: random.whole(1, 6) }] }),
    ];
    await random.oneOf(changes)();
  }

  async function edit(id: number, changes: object): Promise<void> {
    const { headers } = await yard.crew.get(`/api/items/${id}`).expect(200);
    await yard.storeman.patch(`/api/items/${id}`).set('if-match', String(headers['etag'])).send(changes);
  }

  it.each([1, 2])('says what the register says after a random series of changes, seed %i', async (seed) => {
    const random = seededRandom(seed);
    const ids: number[] = [];
    for (let item = 0; item < 8; item += 1) ids.push((await yard.newItem()).id);
    let refreshes: Promise<unknown>[] = [];
    for (let step = 0; step < CHANGES; step += 1) {
      if (random.percent(40)) refreshes.push(index().refresh());
      await change(random.oneOf(ids), random);
      if (!random.percent(10)) continue;
      await Promise.all(refreshes);
      refreshes = [];
      await expectWholeIndex(yard);
    }
    await Promise.all(refreshes);
    await expectWholeIndex(yard);
  });

  it('counts up the day that an item leaves, the day it comes to, and the day of an item that something else was written of', async () => {
    const { id } = await yard.gear(`AT-${engine}`, { examinedDaysAgo: 33 });
    await expectWholeIndex(yard);
    const old = await indexedDay(yard, id);
    const was = await sequences(yard);
    await yard.storeman.post(`/api/items/${id}/quarantine`).send({ reason: 'noisy' }).expect(201);
    await expectWholeIndex(yard);
    const key = `${yard.storeId} ${old}`;
    expect(await sequences(yard)).toEqual(new Map([...was, [key, (was.get(key) ?? 0) + 1]]));
    await record(yard.secondExaminer, id, { doneOn: yard.day(0), release: true }).expect(201);
    await expectWholeIndex(yard);
    const fresh = `${yard.storeId} ${await indexedDay(yard, id)}`;
    const examined = (await sequences(yard)).get(fresh);
    expect(examined).toBe(was.has(fresh) ? (was.get(fresh) ?? 0) + 1 : 0);
    // A promise, say: the day stays, what a calendar says of it does not.
    const { body, headers } = await yard.storeman.get(`/api/items/${id}`).expect(200);
    await yard.storeman
      .patch(`/api/items/${id}`)
      .set('If-Match', headers['etag'] ?? '')
      .send({ notes: `${body.notes} by the door` })
      .expect(200);
    await expectWholeIndex(yard);
    expect((await sequences(yard)).get(fresh)).toBe((examined ?? 0) + 1);
  });

  it('goes by the day that new gear was entered, and by its declaration after that has lapsed', async () => {
    const { id } = await yard.newItem({ declarationOn: yard.day(0) });
    await expectWholeIndex(yard);
    const byDeclaration = await indexedDay(yard, id);
    const now = vi.spyOn(yard.app.get(Clock), 'now').mockReturnValue(`${yard.day(800)}T12:00:00.000Z`);
    try {
      await markAll(yard);
      await index().refresh();
      expect(await indexedDay(yard, id)).toBe(byDeclaration);
    } finally {
      now.mockRestore();
    }
    await index().refresh();
  });

  it('works all of it out again when a scheme asks something else, and only then', async () => {
    await expectWholeIndex(yard);
    expect(await index().refresh()).toBe(0);
    const unitOfWork = yard.app.get(UnitOfWork);
    const ofNow = await yard.app.get(Reads).manager.query('SELECT * FROM due_scheme ORDER BY scheme');
    await unitOfWork.run((manager) => manager.query("UPDATE due_scheme SET fingerprint = 'as it was'"));
    await unitOfWork.run((manager) => manager.query('DELETE FROM due_day'));
    expect(await index().refresh()).toBeGreaterThan(0);
    await expectWholeIndex(yard);
    expect(await yard.app.get(Reads).manager.query('SELECT * FROM due_scheme ORDER BY scheme')).toEqual(
      ofNow,
    );
  });
});

describe('two servers on one PostgreSQL', () => {
  let yard: GearYard;
  let other: Awaited<ReturnType<typeof createApp>>;
  beforeAll(async () => {
    yard = await startGearYard('postgres');
    other = await createApp(yard.app.get<Settings>(SETTINGS, { strict: false }), { quiet: true });
    await other.init();
  });
  afterAll(async () => {
    await other.close();
    await yard.close();
  });

  it('work the same marks off at once while gear is examined, and end with the right index', async () => {
    const ids: number[] = [];
    for (let item = 0; item < 30; item += 1) ids.push((await yard.newItem()).id);
    const indexes = [yard.app, other].map((app) => app.get(DueIndex, { strict: false }));
    for (let round = 1; round <= 8; round += 1) {
      await markAll(yard);
      await markAll(yard);
      const examined = ids.slice(0, 5).map((id) => {
        const body = { type: 'thoroughExamination', outcome: 'fit', doneOn: yard.day(-20 + round) };
        return yard.examiner.post(`/api/items/${id}/inspections`).send(body).expect(201);
      });
      await Promise.all([...indexes.map((index) => index.refresh()), ...examined]);
    }
    await expectWholeIndex(yard);
    expect(await indexRows(yard)).toHaveLength(30);
  });
});

/** How often each store and day was counted up. */
async function sequences(yard: GearYard): Promise<ReadonlyMap<string, number>> {
  const rows = await yard.app
    .get(Reads)
    .manager.query<{ store_id: number; on_day: string; sequence: number }[]>(
      'SELECT store_id, CAST(on_day AS varchar(10)) AS on_day, sequence FROM calendar_day',
    );
  return new Map(rows.map(({ store_id, on_day, sequence }) => [`${store_id} ${on_day}`, sequence]));
}

/** Marks every item stale, as a change of a store's rules does. */
async function markAll(yard: GearYard): Promise<void> {
  await yard.app
    .get(UnitOfWork)
    .run((manager) => manager.query('INSERT INTO due_stale (item_id) SELECT id FROM item'));
}
