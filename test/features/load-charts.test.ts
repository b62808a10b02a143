import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Ledger } from '../../src/ledger/ledger.service.js';
import { ENGINES } from '../support/engines.js';
import { handOver } from '../support/import-client.js';
import { promise } from '../support/promise.js';
import { startGearYard, type GearYard } from '../support/gear-yard.js';

const point = (heightMm: string, distanceMm: string, capacityKg: string) => ({
  heightMm,
  distanceMm,
  capacityKg,
});

const chart = (differences: object = {}) => ({
  distanceBasis: 'loadCentre',
  points: [point('3000', '500', '2500'), point('3000', '800', '1900'), point('4500', '500', '2000')],
  axleToForkFaceMm: '450',
  axleToCarriageMm: '400',
  attachmentCover: { by: 'plate', reference: 'Plate 7 of 2024' },
  ...differences,
});

describe.each(ENGINES)('host machines on %s', (engine) => {
  let server: GearYard;
  beforeAll(async () => void (server = await startGearYard(engine)));
  afterAll(() => server.close());

  const machine = (differences: object = {}) =>
    server.newItem({
      kind: 'hostMachine',
      dimensions: {},
      markings: [{ measure: 'ratedCapacity', value: '2.5', unit: 't' }],
      ...differences,
    });
  const item = async (id: number) => (await server.crew.get(`/api/items/${id}`).expect(200)).body;
  const change = (id: number, version: number, body: object) =>
    server.storeman.patch(`/api/items/${id}`).set('If-Match', `"v${version}"`).send(body);

  it('keeps the chart, the owner and the days of hire as they were given', async () => {
    const hire = { owner: 'Quayside Plant', hiredFrom: server.day(5), hiredTo: server.day(30) };
    const { id } = await machine({ loadChart: chart(), ...hire });
    expect(await item(id)).toMatchObject({ loadChart: chart(), ...hire, version: 1 });
    const [entered] = (await server.crew.get(`/api/items/${id}/history`).expect(200)).body;
    expect(entered).toMatchObject({ action: 'item.created', detail: { loadChart: chart(), ...hire } });
  });

  it('takes numbers for figures, and keeps none of what was not said', async () => {
    const points = [
      { heightMm: 0, distanceMm: 2000, capacityKg: 2500.5 },
      { heightMm: 6000, distanceMm: 2000, capacityKg: 2000 },
    ];
    const { id } = await machine({ loadChart: { distanceBasis: 'reach', points } });
    expect((await item(id)).loadChart).toEqual({
      distanceBasis: 'reach',
      points: [point('0', '2000', '2500.5'), point('6000', '2000', '2000')],
    });
  });

  it('changes and clears them, with a line of history each', async () => {
    const { id } = await machine({ loadChart: chart() });
    const worse = chart({ points: [point('3000', '500', '1500'), point('3000', '800', '900')] });
    await change(id, 1, { loadChart: worse, owner: 'Quayside Plant' }).expect(200);
    expect(await item(id)).toMatchObject({ loadChart: worse, owner: 'Quayside Plant', version: 2 });
    await change(id, 1, { loadChart: null }).expect(412);
    await change(id, 2, { notes: 'hired for the summer' }).expect(200);
    expect((await item(id)).loadChart).toEqual(worse);
    await change(id, 3, { loadChart: null, owner: null }).expect(200);
    expect(await item(id)).toMatchObject({ loadChart: null, owner: null, hiredFrom: null, hiredTo: null });
    const history = (await server.crew.get(`/api/items/${id}/history`).expect(200)).body;
    expect(history.map(({ action }: { action: string }) => action)).toEqual([
      ...['item.edited', 'item.edited', 'item.edited'],
      'item.created',
    ]);
  });

  const low = point('3000', '500', '2500');
  it.each([
    ['one point', { points: [low] }, 'loadChart.points', 'write two points at least'],
    ['no list', { points: 'low' }, 'loadChart.points', 'list'],
    [
      'a point that is none',
      { points: [low, { ...low, capacityKg: 'all' }] },
      'loadChart.points[1].capacityKg',
      'write the capacity in kg as a plain decimal number',
    ],
    [
      'a height beyond belief',
      { points: [low, point('30001', '500', '1')] },
      'loadChart.points[1].heightMm',
      'at most 30000',
    ],
    [
      'a capacity that rises',
      { points: [low, point('4500', '500', '2600')] },
      'loadChart.points[1]',
      'carries more than point 1',
    ],
    [
      'points out of order',
      { points: [point('4500', '500', '2000'), low] },
      'loadChart.points[1]',
      'comes before point 1: write the points by rising height',
    ],
    ['a point twice', { points: [low, low] }, 'loadChart.points[1]', 'keep one of them'],
    [
      'distances swapped',
      { axleToForkFaceMm: '400', axleToCarriageMm: '450' },
      'loadChart.axleToCarriageMm',
      'may be swapped',
    ],
    ['no distance', { axleToCarriageMm: undefined }, 'loadChart.axleToCarriageMm', 'measure it'],
    ['an odd way of measuring', { distanceBasis: 'guess' }, 'loadChart.distanceBasis', 'choose load centres'],
    [
      'a cover without a name',
      { attachmentCover: { by: 'plate' } },
      'loadChart.attachmentCover.reference',
      'write what the plate or the letter is found by',
    ],
    [
      'a cover of another sort',
      { attachmentCover: { by: 'word of mouth', reference: 'x' } },
      'loadChart.attachmentCover.by',
      'choose the plate',
    ],
    ['a field that is none', { tilt: '3' }, 'loadChart.tilt', 'is not a field'],
  ])('refuses %s', async (_, differences, field, words) => {
    const { id } = await machine();
    const refused = await change(id, 1, { loadChart: chart(differences) }).expect(400);
    const errors: { field: string; message: string }[] = refused.body.errors;
    expect(
      errors
        .filter((error) => error.field === field)
        .map(({ message }) => message)
        .join(),
    ).toContain(words);
    expect((await item(id)).loadChart).toBeNull();
  });

  it.each(['chart', 7, [chart()], true])('refuses %j for a chart', async (loadChart) => {
    const { id } = await machine();
    const refused = await change(id, 1, { loadChart }).expect(400);
    expect(JSON.stringify(refused.body.errors)).toContain('loadChart');
  });

  it('keeps no chart of a kind that carries by none', async () => {
    const { id } = await server.newItem();
    const refused = await change(id, 1, { loadChart: chart() }).expect(400);
    expect(refused.body.errors).toEqual([
      { field: 'loadChart', message: 'Panel lifters carry by no load chart: leave it out' },
    ]);
  });

  it('refuses days of hire that do not follow, and a hire from nobody', async () => {
    const { id } = await machine();
    const swapped = { owner: 'Quayside Plant', hiredFrom: server.day(9), hiredTo: server.day(8) };
    expect((await change(id, 1, swapped).expect(400)).body.errors).toEqual([
      { field: 'hiredTo', message: `is before the first day of the hire, ${server.day(9)}` },
    ]);
    expect((await change(id, 1, { hiredTo: server.day(8) }).expect(400)).body.errors[0].field).toBe('owner');
    await change(id, 1, { owner: 'Quayside Plant', hiredFrom: '2026-02-30' }).expect(400);
  });

  it('is fit on the days of its hire only', async () => {
    const { id } = await machine({
      owner: 'Quayside Plant',
      hiredFrom: server.day(5),
      hiredTo: server.day(9),
    });
    const ask = async (from: number, to: number) => {
      const query = { duty: 'hosting', from: server.day(from), to: server.day(to) };
      const { body } = await server.crew.get(`/api/items/${id}/fitness`).query(query).expect(200);
      return body.refusals.filter(({ code }: { code: string }) => code === 'outside_hire');
    };
    const outside = { code: 'outside_hire', source: 'common-practice' };
    expect(await ask(5, 9)).toEqual([]);
    expect(await ask(4, 9)).toEqual([{ ...outside, subject: 'hiredFrom', on: server.day(5) }]);
    expect(await ask(5, 10)).toEqual([{ ...outside, subject: 'hiredTo', on: server.day(9) }]);
    const page = (await server.crew.get(`/register/${id}`).expect(200)).text;
    expect(page).toContain('Hire it earlier');
  });

  it('takes owner and days of hire from an export again, and finds them changed or wrong', async () => {
    const hire = { owner: 'Quayside Plant', hiredFrom: server.day(1), hiredTo: server.day(3) };
    const { tag } = await machine(hire);
    const exported = (await server.storeman.get('/api/register/export.csv').expect(200)).text.split('\r\n');
    const line = exported.find((text) => text.startsWith(`${tag},`)) ?? '';
    expect(line).toContain(`Quayside Plant,${hire.hiredFrom},${hire.hiredTo}`);
    const read = (text: string) => handOver(server.storeman, [exported[0], text, ''].join('\r\n'));
    expect((await read(line)).counts).toMatchObject({ unchanged: 1, faulty: 0 });
    const faults = async (from: string, to: string) => (await read(line.replace(from, to))).faults;
    expect(await faults('Quayside Plant', 'Other Plant')).toMatchObject([
      { code: 'tag_in_register', sentence: expect.stringContaining('owner') },
    ]);
    expect(await faults(hire.hiredTo, '2026-02-30')).toMatchObject([{ column: 'Last day of hire' }]);
    expect(await faults(hire.hiredTo, server.day(4))).toMatchObject([
      { code: 'tag_in_register', sentence: expect.stringContaining('last day of hire') },
    ]);
    const fresh = line.replace(tag, 'HM-77').replace(/HW [^,]+/, 'HM 77 33');
    expect((await read(fresh)).counts).toMatchObject({ sound: 1 });
    expect((await read(fresh.replace('Quayside Plant', ''))).faults).toMatchObject([{ column: 'Owner' }]);
  });

  it('has the jobs it is promised to looked at again when its chart or hire changes', async () => {
    const { id } = await machine({ loadChart: chart() });
    const [from, to] = [server.day(3), server.day(4)];
    const reference = `HOST-${engine}`;
    const jobId = await promise(server, { itemId: id, storeId: server.storeId, reference, from, to });
    const flags = async () => (await server.app.get(Ledger).newest(50, { kind: 'job', id: jobId })).length;
    await change(id, 1, { owner: 'Quayside Plant', loadChart: chart() }).expect(200);
    expect(await flags()).toBe(0);
    await change(id, 2, { hiredTo: server.day(3) }).expect(200);
    expect(await flags()).toBe(1);
    await change(id, 3, { loadChart: chart({ points: chart().points.slice(0, 2) }) }).expect(200);
    expect(await flags()).toBe(2);
  });

  describe('its pages', () => {
    const form = (differences: object = {}) => ({
      kind: 'hostMachine',
      tag: 'HM-90',
      storeId: String(server.storeId),
      maker: 'Harrow Works',
      serial: 'HM 90 44',
      labelLegible: 'true',
      'markings[0].measure': 'ratedCapacity',
      'markings[0].value': '2500',
      'markings[0].unit': 'kg',
      'loadChart.distanceBasis': 'loadCentre',
      'loadChart.points': '3000, 500, 2500\r\n\r\n3000 800 1900\r\n4500; 500; 2000',
      'loadChart.axleToForkFaceMm': '450',
      'loadChart.axleToCarriageMm': '400',
      'loadChart.attachmentCover.by': 'makersLetter',
      'loadChart.attachmentCover.reference': 'Letter of 3 May',
      owner: 'Quayside Plant',
      hiredFrom: '',
      hiredTo: '',
      ...differences,
    });
    const enter = (fields: object) => server.storeman.post('/register/new').type('form').send(fields);

    it('ask for a chart of machines only', async () => {
      const asked = await server.storeman.get('/register/new?kind=hostMachine').expect(200);
      expect(asked.text).toContain('<textarea id="loadChart.points"');
      const other = await server.storeman.get('/register/new?kind=panelLifter').expect(200);
      expect(other.text).not.toContain('loadChart');
      expect(other.text).toContain('name="hiredTo"');
    });

    it('name the line that is wrong, and show it as it was typed', async () => {
      const typed = { 'loadChart.points': '3000, 500, 2500\n3000, 800, 2600\n4500, 500' };
      const unread = (await enter(form(typed)).expect(400)).text;
      expect(unread).toContain('Line 3: write the capacity in kg');
      expect(unread).toContain('4500, 500<');
      const rising = { 'loadChart.points': '3000, 500, 2500\n3000, 800, 2600' };
      expect((await enter(form(rising)).expect(400)).text).toContain('Line 2: carries more than point 1');
      const grouped = { 'loadChart.points': '3000, 500, 2 500\n3000, 800, 2000' };
      const refused = (await enter(form(grouped)).expect(400)).text;
      expect(refused).toContain('Line 1: write the capacity in kg');
      expect(refused).toContain('3000, 500, 2 500');
    });

    it('show the chart, its cover and whose the machine is, and lose nothing on the way', async () => {
      const made = await enter(form()).expect(303);
      const path = made.headers['location'] ?? '';
      const page = (await server.crew.get(path).expect(200)).text;
      for (const words of ['What it carries', 'Load centre', 'by letter of the maker', 'Letter of 3 May']) {
        expect(page).toContain(words);
      }
      expect(page).toContain('Quayside Plant');
      const edit = (await server.storeman.get(`${path}/edit`).expect(200)).text;
      expect(edit).toContain('3000, 500, 2500\n3000, 800, 1900\n4500, 500, 2000');
      const id = Number(path.split('/').at(-1));
      const saved = server.storeman.post(`${path}/edit`).type('form');
      await saved.send({ ...form({ owner: '' }), version: '1' }).expect(303);
      expect(await item(id)).toMatchObject({ owner: null, loadChart: { points: [{}, {}, {}] }, version: 2 });
      const emptied = Object.fromEntries(
        Object.entries(form()).map(([name, value]) => [name, /points|axle|Cover/.test(name) ? '' : value]),
      );
      await server.storeman
        .post(`${path}/edit`)
        .type('form')
        .send({ ...emptied, version: '2' })
        .expect(303);
      expect((await item(id)).loadChart).toBeNull();
      expect((await server.crew.get(path).expect(200)).text).toContain('none on record');
    });
  });
});
