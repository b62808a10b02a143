import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ENGINES } from '../support/engines.js';
import { jobInput, startGearYard, type GearYard, type JobDifferences } from '../support/gear-yard.js';
import { expectWholeLedger } from '../support/invariants.js';

interface Named {
  readonly key: string;
}
interface Item {
  readonly tag: string;
  readonly change: string;
  readonly reason?: string;
  readonly before?: Named;
  readonly after?: Named;
  readonly refusals: readonly { readonly code: string }[];
}

/*
 * PL-1 takes 500 kg and was examined 10 days ago, PL-2 takes 2 t and was examined 20 days ago. A thorough examination
 * of a lifting accessory holds 6 months: LOLER 1998 reg 9(3)(a)(i).
 */
describe.each(ENGINES)('what if a job changes, on %s', (engine) => {
  let yard: GearYard;
  beforeAll(async () => {
    yard = await startGearYard(engine);
    await yard.gear('PL-1');
    await yard.gear('PL-2', { rating: ['2', 't'], examinedDaysAgo: 20 });
  });
  afterAll(() => yard.close());

  /** A job that has its one lifter of 500 kg booked, on days of its own. */
  async function bookedJob(
    from: number,
  ): Promise<{ id: number; reference: string; from: number; to: number }> {
    const days = { from, to: from + 1 };
    const id = await yard.job(days);
    await yard.storeman.post(`/api/jobs/${id}/reservation`).expect(201);
    const { body } = await yard.storeman.get(`/api/jobs/${id}`).expect(200);
    return { id, reference: body.reference, ...days };
  }

  const ask = (id: number, change: object, version = 1) =>
    yard.storeman.post(`/api/jobs/${id}/what-if`).set('if-match', `"v${version}"`).send(change);
  const save = (id: number, change: object, version = 1) =>
    yard.storeman.patch(`/api/jobs/${id}`).set('if-match', `"v${version}"`).send(change);
  const ofMass = (massKg: string) => ({ panels: jobInput(yard.storeId, yard.day, { massKg }).panels });
  const changes = (items: readonly Item[]) =>
    items.map(({ tag, change, reason }) => [tag, change, ...(reason ? [reason] : [])]);

  it('names a booked lifter that a heavier panel makes under-rated, and what takes its place', async () => {
    const { id } = await bookedJob(10);
    // Borders: PL-1 takes 500 kg, so a panel of 500 kg changes the need but nobody's fitness.
    const equal = (await ask(id, ofMass('500')).expect(200)).body;
    expect(equal.booking).toEqual({ unfit: [], surplus: [] });
    expect(equal.items).toEqual([]);
    expect(equal.lines.map(({ changes: list }: { changes: string[] }) => list)).toEqual([['rating']]);
    const { body } = await ask(id, ofMass('500.1')).expect(200);
    expect(body.nothingChanges).toBe(false);
    expect(body.lines).toMatchObject([
      { key: 'panelLifter', before: { rating: { value: '478' } }, after: { rating: { value: '500.1' } } },
    ]);
    expect(body.booking.unfit).toMatchObject([
      {
        tag: 'PL-1',
        state: 'reserved',
        lineKey: 'panelLifter',
        already: false,
        refusals: [{ code: 'under_rated', needed: '500.1', has: '500', unit: 'kg' }],
      },
    ]);
    expect(changes(body.items)).toEqual([
      ['PL-1', 'leaves', 'not_fit'],
      ['PL-2', 'joins'],
    ]);
  });

  it('is right about what saving then does', async () => {
    const { id } = await bookedJob(14);
    const { body: foretold } = await ask(id, ofMass('600')).expect(200);
    await save(id, ofMass('600')).expect(200);
    const { body: booking } = await yard.storeman.get(`/api/jobs/${id}/booking`).expect(200);
    const unfit = booking.unfit as {
      item: { tag: string };
      refusals: unknown;
      replacement: { tag: string };
    }[];
    expect(unfit.map(({ item, refusals }) => [item.tag, refusals])).toEqual(
      foretold.booking.unfit.map(({ tag, refusals }: Item) => [tag, refusals]),
    );
    expect(unfit.map(({ replacement }) => [replacement.tag, 'joins'])).toEqual(
      changes(foretold.items).filter(([, change]) => change === 'joins'),
    );
    const again = (await ask(id, ofMass('600'), 2).expect(200)).body;
    expect(again).toMatchObject({ nothingChanges: true, jobVersion: 2 });
    // Unfit already, and by more now: that is a difference too.
    const heavier = (await ask(id, ofMass('700'), 2).expect(200)).body;
    expect(heavier.booking.unfit).toMatchObject([{ tag: 'PL-1', already: true }]);
    await save(id, ofMass('478'), 2).expect(200);
  });

  it('says what more crews and lifters need, and what they would lack', async () => {
    const { id } = await bookedJob(18);
    const { counts } = jobInput(yard.storeId, yard.day, { lifters: 3 });
    const { body } = await ask(id, { counts }).expect(200);
    expect(body.lines).toMatchObject([
      {
        key: 'panelLifter',
        changes: ['quantity', 'shortfall'],
        before: { quantity: 1, missing: 0 },
        after: { quantity: 3, missing: 1 },
      },
    ]);
    expect(changes(body.items)).toEqual([['PL-2', 'joins']]);
    const crew = (
      await ask(id, { counts: { ...counts, crews: 2, personsAloft: 2 }, adjustments: [] }).expect(200)
    ).body;
    const lines = crew.lines as { key: string; changes: string[]; after: { quantity: number } }[];
    // A work platform to a crew, two safety lines to a lifter in use (common practice, no source).
    for (const [key, quantity] of [
      ['workPlatform', 2],
      ['safetyLines', 6],
    ] as const) {
      expect(lines.find((line) => line.key === key)).toMatchObject({
        changes: ['comes'],
        after: { quantity, missing: quantity },
      });
    }
    const none = (await ask(id, { counts: { ...counts, liftersInUse: 0 } }).expect(200)).body;
    expect(
      none.lines.map(({ key, changes: list }: { key: string; changes: string[] }) => [key, list]),
    ).toEqual([['panelLifter', ['goes']]]);
    expect(none.booking).toMatchObject({ unfit: [], surplus: [{ tag: 'PL-1', state: 'reserved' }] });
    expect(changes(none.items)).toEqual([['PL-1', 'leaves', 'line_gone']]);
  });

  it('names what a later back day lets go out of date on the job', async () => {
    const { id } = await bookedJob(22);
    // Six months from 10 days ago end before 250 days from now, whatever the months.
    const { body } = await ask(id, { backDay: yard.day(250) }).expect(200);
    expect(body.booking.unfit).toMatchObject([
      { tag: 'PL-1', refusals: [{ code: 'due_during_job', subject: 'thoroughExamination' }] },
    ]);
    expect(body.lines).toMatchObject([{ changes: ['shortfall'], after: { missing: 1 } }]);
  });

  it('says that nothing changes, and writes nothing whatever it is asked', async () => {
    const { id } = await bookedJob(26);
    const entries = await expectWholeLedger(yard.app);
    const before = (await yard.storeman.get(`/api/jobs/${id}`).expect(200)).body;
    for (const change of [{}, { name: 'Marram Hall, east' }]) {
      expect((await ask(id, change).expect(200)).body).toMatchObject({
        jobId: id,
        nothingChanges: true,
        lines: [],
        items: [],
        booking: { unfit: [], surplus: [] },
      });
    }
    await ask(id, { ...ofMass('900'), backDay: yard.day(27), storeId: yard.farStoreId }).expect(200);
    await yard.storeman
      .post(`/api/jobs/${id}/what-if`)
      .set('if-match', '"v1"')
      .set('idempotency-key', 'look-once')
      .send({})
      .expect(200);
    expect(await expectWholeLedger(yard.app)).toBe(entries);
    expect((await yard.storeman.get(`/api/jobs/${id}`).expect(200)).body).toEqual(before);
    // The key was not used up by looking.
    await save(id, { name: 'Marram' }).set('idempotency-key', 'look-once').expect(200);
  });

  it('refuses what saving refuses, in the same words', async () => {
    const first = await bookedJob(30);
    const second = await bookedJob(34);
    const cancelled = await yard.job({ from: 60, to: 61 });
    await yard.storeman.post(`/api/jobs/${cancelled}/cancellation`).set('if-match', '"v1"').expect(200);
    const cases: readonly (readonly [number, object, number, string])[] = [
      [first.id, { loadOutDay: 'soon' }, 1, 'bad_input'],
      [first.id, { surprise: 1 }, 1, 'bad_input'],
      [first.id, { backDay: yard.day(29), scheme: 'moon', storeId: 9999 }, 1, 'bad_input'],
      [first.id, { ...ofMass('478'), adjustments: [{ lineKey: 'none', reason: 'x' }] }, 1, 'bad_input'],
      [first.id, {}, 2, 'changed_meanwhile'],
      [first.id, { reference: ` ${second.reference.toLowerCase()} ` }, 1, 'reference_taken'],
      // PL-1 is booked by the second job on its days.
      [first.id, { backDay: yard.day(34) }, 1, 'not_allowed_now'],
      [cancelled, {}, 2, 'not_allowed_now'],
      [999_999, {}, 1, 'not_found'],
    ];
    for (const [id, change, version, code] of cases) {
      const [looked, saved] = [await ask(id, change, version), await save(id, change, version)];
      expect(looked.body.code).toBe(code);
      const { instance: _looked, ...asked } = looked.body;
      const { instance: _saved, ...refused } = saved.body;
      expect([looked.status, asked]).toEqual([saved.status, refused]);
    }
    await yard.storeman.post(`/api/jobs/${first.id}/what-if`).send({}).expect(428);
    await yard.storeman.post('/api/jobs/nothing/what-if').set('if-match', '"v1"').send({}).expect(404);
  });

  it('is for those who keep jobs', async () => {
    const { id } = await bookedJob(40);
    for (const path of [`/api/jobs/${id}/what-if`, `/jobs/${id}/what-if`]) {
      for (const client of [yard.crew, yard.examiner]) {
        expect((await client.post(path).set('if-match', '"v1"').send({})).status).toBe(403);
      }
    }
    await yard.manager.post(`/api/jobs/${id}/what-if`).set('if-match', '"v1"').send({}).expect(200);
  });

  it('names an item that moves to another line', async () => {
    const id = await yard.job({ from: 70, to: 71 });
    const dropped = jobInput(yard.storeId, yard.day).adjustments;
    const spare = {
      lineKey: 'spare',
      label: 'Spare lifter',
      kind: 'panelLifter',
      duty: 'lifting',
      quantity: 1,
      rating: { value: '400', unit: 'kg' },
      reason: 'for the second gate',
    };
    const adjustments = [...dropped, { lineKey: 'panelLifter', quantity: 0, reason: 'the client lifts' }];
    const { body } = await ask(id, { adjustments, addedLines: [spare] }).expect(200);
    expect(body.items).toMatchObject([
      { tag: 'PL-1', change: 'moves', before: { key: 'panelLifter' }, after: { key: 'spare' } },
    ]);
  });

  describe('as a page', () => {
    const fields = (job: JobDifferences, changed: Record<string, string> = {}) => {
      const typed = Object.entries(jobInput(yard.storeId, yard.day, job)).flatMap(([name, value]) =>
        asFields(name, value),
      );
      return { ...Object.fromEntries(typed), version: '1', ...changed };
    };
    const send = (path: string, form: object) => yard.storeman.post(path).type('form').send(form);

    it('shows the differences above the form as it was typed, and the form can still be saved', async () => {
      const job = await bookedJob(44);
      const typed = fields(job, { 'panels[0].massKg': '612.5', _once: 'a-look' });
      const edit = (await yard.storeman.get(`/jobs/${job.id}/edit`).expect(200)).text;
      expect(edit).toContain(`formaction="/jobs/${job.id}/what-if"`);
      const { text } = await send(`/jobs/${job.id}/what-if`, typed).expect(200);
      expect(text).toContain('What would change');
      expect(text).toContain('1 booked item would not be fit');
      expect(text).toContain('Rated too low: has 500\u00a0kg, needs 612.5\u00a0kg.');
      expect(text).toMatch(/478\u00a0kg <span aria-hidden="true">→/);
      expect(text).toContain('value="612.5"');
      expect(text).toContain('name="version" value="1"');
      expect(text).not.toContain('a-look');
      // Even the key of the form that looked is good for saving.
      await send(`/jobs/${job.id}/edit`, typed).expect(303);
      expect((await yard.storeman.get(`/api/jobs/${job.id}`).expect(200)).body.panels[0].massKg).toBe(
        '612.5',
      );
    });

    it('says when nothing changes, and what is wrong as saving would', async () => {
      const job = await bookedJob(48);
      const path = `/jobs/${job.id}/what-if`;
      expect((await send(path, fields(job)).expect(200)).text).toContain('Nothing changes: the gear lines');
      const wrong = await send(path, fields(job, { 'panels[0].massKg': 'heavy' })).expect(400);
      expect(wrong.text).toContain('panels[0].massKg-error');
      expect(wrong.text).not.toContain('What would change');
      expect((await send(path, fields(job, { version: '7' })).expect(412)).text).toContain(
        'Someone else changed this meanwhile',
      );
      const pasted = 'Panel,Height (mm),Width (mm),Thickness (mm),Mass (kg),Qty\nB1,7450,1210,112,2100,3\n';
      const { text } = await send(path, fields(job, { panelsCsv: pasted })).expect(200);
      expect(text).toContain('Short by 1 item');
      expect(text).toContain('B1,7450');
    });
  });
});

/** A value of the API as a form sends it: `counts.crews`, `panels[0].name`. */
function asFields(name: string, value: unknown): [string, string][] {
  if (Array.isArray(value)) {
    return value.flatMap((row: unknown, index) => asFields(`${name}[${index}]`, row));
  }
  if (typeof value === 'object' && value !== null) {
    return Object.entries(value).flatMap(([field, inner]: [string, unknown]) =>
      asFields(`${name}.${field}`, inner),
    );
  }
  return [[name, String(value)]];
}
