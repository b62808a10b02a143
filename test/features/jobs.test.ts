import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ENGINES } from '../support/engines.js';
import { jobInput, startGearYard, type GearYard } from '../support/gear-yard.js';

describe.each(ENGINES)('jobs on %s', (engine) => {
  let yard: GearYard;
  beforeAll(async () => void (yard = await startGearYard(engine)));
  afterAll(() => yard.close());

  const input = (changes: object = {}) => ({ ...jobInput(yard.storeId, yard.day), ...changes });
  const refused = async (changes: object): Promise<readonly string[]> => {
    const { body } = await yard.storeman.post('/api/jobs').send(input(changes)).expect(400);
    return body.errors.map(
      ({ field, message }: { field: string; message: string }) => `${field}: ${message}`,
    );
  };

  it('makes, gives and changes a job, with its ETag', async () => {
    const made = await yard.storeman
      .post('/api/jobs')
      .send(input({ reference: 'MH-1' }))
      .expect(201);
    expect(made.body).toMatchObject({
      reference: 'MH-1',
      storeName: 'Yard',
      version: 1,
      cancelled: false,
      warnings: [],
    });
    const url = `/api/jobs/${made.body.id}`;
    const read = await yard.crew.get(url).expect(200);
    expect(read.headers['etag']).toBe('"v1"');
    const changed = await yard.storeman
      .patch(url)
      .set('if-match', '"v1"')
      .send({ name: 'Marram Hall, phase 2' })
      .expect(200);
    expect(changed.body).toMatchObject({ name: 'Marram Hall, phase 2', version: 2, reference: 'MH-1' });
    await yard.storeman.patch(url).send({ name: 'x' }).expect(428);
    const late = await yard.storeman.patch(url).set('if-match', '"v1"').send({ name: 'y' }).expect(412);
    expect(late.body.code).toBe('changed_meanwhile');
    await yard.crew.patch(url).set('if-match', '"v2"').send({ name: 'z' }).expect(403);
  });

  it('takes a reference once, give or take case and spaces', async () => {
    await yard.storeman
      .post('/api/jobs')
      .send(input({ reference: 'Q 77' }))
      .expect(201);
    const again = await yard.storeman
      .post('/api/jobs')
      .send(input({ reference: 'q-77' }))
      .expect(409);
    expect(again.body.code).toBe('reference_taken');
  });

  it('refuses what cannot be, in words and all at once', async () => {
    expect(await refused({ loadOutDay: yard.day(5), backDay: yard.day(4) })).toEqual([
      `backDay: should not come before the load-out day ${yard.day(5)}`,
    ]);
    expect((await refused({ loadOutDay: yard.day(5), backDay: yard.day(375) }))[0]).toContain(
      'more than a year',
    );
    expect(await refused({ scheme: 'atlantis', method: 'by hand', storeId: 999 })).toHaveLength(3);
    expect((await refused({ panels: [] }))[0]).toContain('at least one panel');
    expect((await refused({ loadOutDay: '2026-02-30' }))[0]).toContain('a day that exists');
  });

  it('takes one day, and a year to the day', async () => {
    await yard.storeman
      .post('/api/jobs')
      .send(input({ loadOutDay: yard.day(1), backDay: yard.day(1) }))
      .expect(201);
    await yard.storeman
      .post('/api/jobs')
      .send(input({ loadOutDay: '2027-03-01', backDay: '2028-03-01' }))
      .expect(201);
    expect((await refused({ loadOutDay: '2027-03-01', backDay: '2028-03-02' }))[0]).toContain('backDay');
  });

  it.each([
    ['both masses', { arealMassKgPerM2: '52' }, 'not both'],
    ['no mass', { massKg: undefined }, 'weighed mass'],
    ['a negative mass', { massKg: '-5' }, 'massKg'],
    ['no number', { massKg: 'NaN' }, 'massKg'],
    ['an endless number', { heightMm: '1e309' }, 'heightMm'],
    ['metres for millimetres', { heightMm: '7.45' }, 'look at the unit'],
    ['an absurd size', { widthMm: '99999' }, 'look at the unit'],
    ['a count of none', { count: 0 }, 'from 1 to'],
    ['half a panel', { count: 1.5 }, 'whole number'],
    ['fittings in its weighed mass', { fittingsKg: '12' }, 'panels[0].fittingsKg: the weighed mass has'],
    ['its centre of gravity on its edge', { centreOffsetMm: '3725' }, 'must lie inside the panel'],
    ['fittings of less than nothing', { fittingsKg: '-1' }, 'the mass of the fittings in kg'],
    ['a centre of gravity in words', { centreOffsetMm: 'middle' }, 'the centre of gravity lies'],
  ])('refuses a panel with %s', async (_, changes, words) => {
    const [panel] = input().panels;
    expect((await refused({ panels: [{ ...panel, ...changes }] })).join('\n')).toContain(words);
  });

  it('refuses a change of a line without a reason, below the method, or of no line', async () => {
    expect(
      (await refused({ adjustments: [{ lineKey: 'panelLifter', quantity: 3, reason: '' }] }))[0],
    ).toContain('write why');
    const low = {
      lineKey: 'panelLifter',
      rating: { value: '400', unit: 'kg' },
      reason: 'lighter than it looks',
    };
    expect((await refused({ adjustments: [low] }))[0]).toContain('at least 478 kg');
    expect((await refused({ adjustments: [{ lineKey: 'kite', reason: 'wind' }] }))[0]).toContain(
      'no such line',
    );
    const unrated = { label: 'Spare sling', kind: 'sling', duty: 'lifting', quantity: 1, reason: 'corner' };
    expect((await refused({ addedLines: [unrated] }))[0]).toContain('rated for');
  });

  it('adds a line with a key of its own', async () => {
    const line = {
      label: 'Corner sling',
      kind: 'sling',
      duty: 'lifting',
      quantity: 2,
      rating: { value: '1', unit: 't' },
      lengthM: '3',
      reason: 'corner panels',
    };
    const { body } = await yard.storeman
      .post('/api/jobs')
      .send(input({ addedLines: [line] }))
      .expect(201);
    expect(body.addedLines).toMatchObject([{ lineKey: 'added1', label: 'Corner sling' }]);
    const proposal = await yard.storeman.get(`/api/jobs/${body.id}/proposal`).expect(200);
    const added = proposal.body.lines.find((entry: { line: { key: string } }) => entry.line.key === 'added1');
    expect(added).toMatchObject({ missing: 2, line: { rating: { value: '1000', unit: 'kg' } } });
  });

  it('works out what a hitched sling must be rated for, and refuses a hitch that cannot be', async () => {
    const line = {
      label: 'Choked slings',
      kind: 'sling',
      duty: 'lifting',
      quantity: 2,
      rating: { value: '800', unit: 'kg' },
      hitch: { mode: 'choked' },
      reason: 'frame comes first',
    };
    const added = async (changes: object) =>
      yard.storeman.post('/api/jobs').send(input({ addedLines: [{ ...line, ...changes }] }));
    const made = await added({});
    const proposal = await yard.storeman.get(`/api/jobs/${made.body.id}/proposal`).expect(200);
    const planned = proposal.body.lines.find(
      ({ line: { key } }: { line: { key: string } }) => key === 'added1',
    );
    // 800 kg / 0.8 = 1000 kg (EN 1492, choked).
    expect(planned.line).toMatchObject({ rating: { value: '1000', unit: 'kg' } });
    for (const hitch of [
      { mode: 'twoLeg' },
      { mode: 'twoLeg', angleDeg: '75' },
      { mode: 'twoLeg', angleDeg: '-1' },
      { mode: 'basketParallel', angleDeg: '60' },
      { mode: 'knot' },
      { angleDeg: '3' },
    ]) {
      expect((await added({ hitch })).status, JSON.stringify(hitch)).toBe(400);
    }
    expect((await added({ kind: 'shackle' })).body.errors[0].message).toContain('only a sling is hitched');
    const alone = await added({ quantity: 1, hitch: { mode: 'twoLeg', angleDeg: '30' } });
    expect(alone.body.errors[0].message).toContain('takes 2 single slings');
  });

  it('warns of a load-out day in the past, and takes it', async () => {
    const { body } = await yard.storeman
      .post('/api/jobs')
      .send(input({ loadOutDay: yard.day(-1) }))
      .expect(201);
    expect(body.warnings).toEqual([expect.stringContaining('has passed')]);
  });

  it('reads a panel schedule with units in its headings', async () => {
    const { body: job } = await yard.storeman.post('/api/jobs').send(input()).expect(201);
    const csv =
      'Panel;Height [m];Width (in);Thickness (mm);kg/m2;Packing (kg);Qty\nA1;7,45;40;112;52;;14\nA2;6,32;38,5;112;52;24;4\n';
    const { body } = await yard.storeman
      .post(`/api/jobs/${job.id}/panels-csv`)
      .set('if-match', '"v1"')
      .send({ csv })
      .expect(200);
    // 40 in = 1 016 mm and 38.5 in = 977.9 mm, as 1 in = 25.4 mm exactly (NIST SP 811 appendix B.8).
    expect(body.panels).toEqual([
      {
        name: 'A1',
        heightMm: '7450',
        widthMm: '1016',
        thicknessMm: '112',
        arealMassKgPerM2: '52',
        packingKg: '0',
        count: 14,
      },
      {
        name: 'A2',
        heightMm: '6320',
        widthMm: '977.9',
        thicknessMm: '112',
        arealMassKgPerM2: '52',
        packingKg: '24',
        count: 4,
      },
    ]);
  });

  it('reads fittings and a centre of gravity off the middle, each where it is given', async () => {
    const { body: job } = await yard.storeman.post('/api/jobs').send(input()).expect(201);
    const send = (csv: string) =>
      yard.storeman.post(`/api/jobs/${job.id}/panels-csv`).set('if-match', '"v1"').send({ csv });
    const sizes = 'Panel,Height (mm),Width (mm),Thickness (mm),Mass (kg),kg/m2,Qty';
    const wrong = await send(`${sizes},Fittings (kg)\nA1,7450,1210,112,478,,2,18\n`).expect(400);
    expect(wrong.body.errors).toEqual([
      {
        field: 'panels[0].fittingsKg',
        message: expect.stringContaining('the weighed mass has the fittings'),
      },
    ]);
    await send(`${sizes},Fittings (kg/m2)\nA1,7450,1210,112,478,,2,\n`).expect(200);
    const again = await yard.storeman
      .post(`/api/jobs/${job.id}/panels-csv`)
      .set('if-match', '"v2"')
      .send({
        csv: `${sizes},Mass of fittings (lb),Centre of gravity offset (in)\nA1,7450,1210,112,478,,2,,0\nA2,7450,1210,112,,52,2,40,2.5\nA3,7450,1210,112,,52,2,0,\n`,
      })
      .expect(200);
    // 40 lb = 18.1436948 kg and 2.5 in = 63.5 mm, exactly (1959 pound and inch; NIST SP 811 appendix B.8).
    const usual = { heightMm: '7450', widthMm: '1210', thicknessMm: '112', packingKg: '0', count: 2 };
    expect(again.body.panels).toEqual([
      { name: 'A1', ...usual, massKg: '478', centreOffsetMm: '0' },
      { name: 'A2', ...usual, arealMassKgPerM2: '52', fittingsKg: '18.1436948', centreOffsetMm: '63.5' },
      { name: 'A3', ...usual, arealMassKgPerM2: '52', fittingsKg: '0' },
    ]);
  });

  it('does not take a centre of gravity measured from the foot for one off the middle', async () => {
    const { body: job } = await yard.storeman.post('/api/jobs').send(input()).expect(201);
    const csv =
      'Panel,Height (mm),Width (mm),Thickness (mm),Mass (kg),Qty,CG height (mm)\nA1,7450,1210,112,478,2,3700\n';
    const { body } = await yard.storeman
      .post(`/api/jobs/${job.id}/panels-csv`)
      .set('if-match', '"v1"')
      .send({ csv })
      .expect(422);
    expect(body.detail).toContain('Two columns read as height');
  });

  it('takes nothing of a schedule with a wrong row, and names each', async () => {
    const { body: job } = await yard.storeman.post('/api/jobs').send(input()).expect(201);
    const csv =
      'Panel,Height (mm),Width (mm),Thickness (mm),Mass (kg),Qty\nA1,7450,1210,112,478,0\nA2,-7450,1210,112,,2\n';
    const send = (text: string) =>
      yard.storeman.post(`/api/jobs/${job.id}/panels-csv`).set('if-match', '"v1"').send({ csv: text });
    const { body } = await send(csv).expect(400);
    expect(body.errors).toEqual([
      { field: 'line 2, quantity', message: "'0' is no whole number above 0" },
      { field: 'line 3, height', message: "'-7450' is negative" },
    ]);
    expect((await send('Panel,Colour\nA1,red\n').expect(422)).body.detail).toContain(
      'height, width, thickness, quantity, mass',
    );
    expect((await yard.storeman.get(`/api/jobs/${job.id}`)).body.version).toBe(1);
  });

  it('refuses a row with more cells than headings, as a decimal comma between commas makes', async () => {
    const { body: job } = await yard.storeman.post('/api/jobs').send(input()).expect(201);
    const csv = 'Panel,Height (mm),Width (mm),Thickness (mm),Mass (kg),Qty\nA1,7450,1210,112,478,5,2\n';
    const { body } = await yard.storeman
      .post(`/api/jobs/${job.id}/panels-csv`)
      .set('if-match', '"v1"')
      .send({ csv })
      .expect(400);
    expect(body.errors).toEqual([{ field: 'line 2', message: 'has more cells than there are headings' }]);
  });

  it.each([
    { name: null },
    { storeId: null },
    { storeId: 2_147_483_648 },
    { panels: null },
    { counts: null },
    { otherStores: null },
    { adjustments: null },
  ])('refuses a change to %j', async (change) => {
    const { body: job } = await yard.storeman.post('/api/jobs').send(input()).expect(201);
    const { body } = await yard.storeman
      .patch(`/api/jobs/${job.id}`)
      .set('if-match', '"v1"')
      .send(change)
      .expect(400);
    expect(body.errors[0].field).toBe(Object.keys(change)[0]);
  });

  it('cancels a job once', async () => {
    const { body: job } = await yard.storeman.post('/api/jobs').send(input()).expect(201);
    const cancel = (version: number) =>
      yard.storeman.post(`/api/jobs/${job.id}/cancellation`).set('if-match', `"v${version}"`);
    expect((await cancel(1).expect(200)).body).toMatchObject({ cancelled: true, version: 2 });
    expect((await cancel(2).expect(409)).body.code).toBe('not_allowed_now');
  });

  it('lists what is still to come back first, page by page', async () => {
    const seen: string[] = [];
    let after: string | undefined;
    do {
      const { body } = await yard.crew
        .get('/api/jobs')
        .query({ limit: 3, ...(after && { after }) })
        .expect(200);
      seen.push(
        ...body.jobs.map(
          ({ backDay, loadOutDay, id }: { backDay: string; loadOutDay: string; id: number }) =>
            `${backDay >= yard.day(0) ? 'a' : 'b'} ${loadOutDay} ${String(id).padStart(4, '0')}`,
        ),
      );
      after = body.next;
    } while (after);
    const past = await yard.storeman
      .post('/api/jobs')
      .send(input({ loadOutDay: yard.day(-30), backDay: yard.day(-20) }))
      .expect(201);
    const whole = (await yard.crew.get('/api/jobs').query({ limit: 100 }).expect(200)).body.jobs;
    expect(seen).toHaveLength(whole.length - 1);
    expect(seen).toEqual([...seen].sort());
    expect(new Set(seen).size).toBe(seen.length);
    expect(whole.at(-1)).toMatchObject({
      id: past.body.id,
      state: 'planned',
      booked: 0,
      needed: 1,
      flagged: 0,
    });
    await yard.crew.get('/api/jobs').query({ after: 'nonsense' }).expect(400);
  });
});
