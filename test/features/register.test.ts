import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ENGINES } from '../support/engines.js';
import { lifter, startGearServer, type GearServer } from '../support/gear-server.js';

describe.each(ENGINES)('the register on %s', (engine) => {
  let server: GearServer;
  beforeAll(async () => void (server = await startGearServer(engine)));
  afterAll(() => server.close());

  const enter = (differences: object) =>
    server.storeman.post('/api/items').send(lifter(server.storeId, differences));

  /** The message about a field of a refused entry. */
  async function refusedField(differences: object, field: string): Promise<string> {
    const { status, body } = await enter(differences);
    expect({ status, code: body.code }).toEqual({ status: 400, code: 'bad_input' });
    const error = body.errors.find((entry: { field: string }) => entry.field === field);
    return error?.message ?? `no error about ${field} in ${JSON.stringify(body.errors)}`;
  }

  it('enters an item as marked and gives it back, unexamined and in store', async () => {
    const made = await enter({ tag: 'sl 014', dimensions: { jawMaximumMm: 200 } }).expect(201);
    expect(made.headers['etag']).toBe('"v1"');
    const read = await server.crew.get(`/api/items/${made.body.id}`).expect(200).expect('etag', '"v1"');
    expect(read.body).toMatchObject({
      tag: 'sl 014',
      condition: 'inService',
      currency: 'neverExamined',
      custody: { state: 'inStore' },
      markings: [{ measure: 'workingLoadLimit', value: '500', unit: 'kg' }],
      dimensions: { jawMaximumMm: '200' },
      labelLegible: true,
      certificateOnFile: false,
    });
  });

  it('keeps entering to the storeman and the manager', async () => {
    const refused = await server.crew.post('/api/items').send(lifter(server.storeId)).expect(403);
    expect(refused.body.code).toBe('not_your_role');
    await server.manager.post('/api/items').send(lifter(server.storeId)).expect(201);
    await server.visitor().get('/api/items').expect(401);
  });

  it('refuses a tag that another item has, give or take case and spaces, and names it', async () => {
    const first = await server.newItem({ tag: 'AB-7' });
    const refused = await enter({ tag: 'ab 7' }).expect(409);
    expect(refused.body).toMatchObject({ code: 'tag_taken', otherItem: { id: first.id, tag: 'AB-7' } });
    expect(refused.body.detail).toContain('AB-7');
  });

  it('refuses a maker and serial number that another item has', async () => {
    const first = await server.newItem({ maker: 'Carrow Forge', serial: 'ck 44-7' });
    const refused = await enter({ maker: 'CARROW  FORGE', serial: 'CK-44 7' }).expect(409);
    expect(refused.body).toMatchObject({ code: 'serial_taken', otherItem: { id: first.id } });
    await enter({ maker: 'Another Forge', serial: 'CK-44 7' }).expect(201);
  });

  it('refuses a serial number easily mistaken for another of the maker, unless told that they are two', async () => {
    const first = await server.newItem({ maker: 'Delph', serial: 'O1' });
    const twin = lifter(server.storeId, { maker: 'Delph', serial: '0I' });
    const refused = await server.storeman.post('/api/items').send(twin).expect(409);
    expect(refused.body).toMatchObject({ code: 'serial_looks_alike', otherItem: { id: first.id } });
    await server.storeman
      .post('/api/items')
      .send({ ...twin, acceptLookAlike: true })
      .expect(201);
  });

  it('lets one of two through that come at the same moment', async () => {
    const [one, two] = [lifter(server.storeId, { tag: 'RACE-9' }), lifter(server.storeId, { tag: 'race-9' })];
    const answers = await Promise.all(
      [one, two].map((body) => server.storeman.post('/api/items').send(body)),
    );
    expect(answers.map(({ status }) => status).sort()).toEqual([201, 409]);
    expect(answers.find(({ status }) => status === 409)?.body.code).toBe('tag_taken');
  });

  it('asks for a serial number unless it is said to be unknown', async () => {
    expect(await refusedField({ serial: undefined }, 'serial')).toContain(
      'or say that the plate cannot be read',
    );
    expect(await refusedField({ serialUnknown: true }, 'serial')).toContain('leave the serial number blank');
    const made = await enter({ serial: undefined, serialUnknown: true }).expect(201);
    expect(made.body.serial).toBeNull();
    const { body } = await server.crew.get(`/api/items/${made.body.id}/fitness`).expect(200);
    expect(body.refusals.map(({ code }: { code: string }) => code)).toContain('serial_unknown');
  });

  it.each([['tag'], ['serial'], ['maker']])(
    'refuses a %s that is blank or nothing but signs',
    async (field) => {
      expect(await refusedField({ [field]: '   ' }, field)).toMatch(/^write/);
      expect(await refusedField({ [field]: ' - / - ' }, field)).toMatch(/^write/);
      expect(await refusedField({ [field]: 'A\u0001B' }, field)).toMatch(/^write/);
      expect(await refusedField({ [field]: 'Ｘ'.repeat(81) }, field)).toContain('at most');
    },
  );

  it('refuses text that reads otherwise than it is, and takes what runs from right to left', async () => {
    // Unicode UAX #9, section 2: embeddings, overrides and isolates. A tag of 'RS-\u202E100' is seen as RS-001.
    for (const turn of ['\u202A', '\u202B', '\u202C', '\u202D', '\u202E', '\u2066', '\u2069']) {
      for (const field of ['serial', 'notes'])
        expect(await refusedField({ [field]: `RS-${turn}100` }, field)).toContain('not seen');
    }
    const notes = '\u05d7\u05d1\u05dc 12\u200f, \u202f5\u00a0mm';
    expect((await enter({ notes }).expect(201)).body.notes).toBe(notes);
  });

  it('refuses a kind and a store that are not there', async () => {
    expect(await refusedField({ kind: 'hammer' }, 'kind')).toContain("'hammer' is not a kind");
    expect(await refusedField({ storeId: 99_999 }, 'storeId')).toBe('there is no such store');
    expect(await refusedField({ storeId: 1e12 }, 'storeId')).toBe('choose the store by its number');
  });

  const mark = (value: unknown, unit = 'kg', measure = 'workingLoadLimit') => ({
    markings: [{ measure, value, unit }],
  });

  it.each([['0'], ['-5'], ['NaN'], ['1e3'], ['1,000'], [''], [null], ['Infinity'], ['9'.repeat(40)]])(
    'refuses %s as a rating',
    async (value) => {
      expect(await refusedField(mark(value), 'markings[0].value')).toContain('plain decimal number');
    },
  );

  it('believes a rating up to 500 t and not beyond, in any unit', async () => {
    await enter(mark('500', 't')).expect(201);
    expect(await refusedField(mark('500.000001', 't'), 'markings[0].value')).toContain('not to be believed');
    expect(await refusedField(mark('500001'), 'markings[0].value')).toContain('not to be believed');
    await enter(mark('0.000000001')).expect(201);
  });

  it('refuses a ratchet strap marked in kg: a lashing capacity is a force (EN 12195-2)', async () => {
    const strap = { kind: 'ratchetStrap', ...mark('2500', 'kg', 'lashingCapacity') };
    const message = await refusedField(strap, 'markings[0].unit');
    expect(message).toContain('daN');
    expect(message).toContain("'kg' is not a unit of it");
    await enter({ ...strap, ...mark('2500', 'daN', 'lashingCapacity') }).expect(201);
    const wll = await refusedField({ kind: 'ratchetStrap', ...mark('2500', 'kg') }, 'markings[0].measure');
    expect(wll).toContain('rated by lashing capacity');
  });

  it('refuses a unit of nothing, a marking without its figure, and a rating of gear that carries none', async () => {
    expect(await refusedField(mark('5', 'ton'), 'markings[0].unit')).toContain("'ton'");
    const noValue = { markings: [{ measure: 'workingLoadLimit', unit: 'kg' }] };
    expect(await refusedField(noValue, 'markings[0].value')).toContain('plain decimal number');
    expect(await refusedField({ kind: 'safetyLine', ...mark('5') }, 'markings[0].measure')).toContain(
      'carry no rating',
    );
    const half = { kind: 'workPlatform', ...mark('1.5', 'persons', 'ratedPersons') };
    expect(await refusedField(half, 'markings[0].value')).toBe('persons are counted whole');
  });

  it('registers an item without a rating, which no duty takes', async () => {
    const made = await enter({ markings: [] }).expect(201);
    const { body } = await server.crew.get(`/api/items/${made.body.id}/fitness`).expect(200);
    expect(body.fit).toBe(false);
    expect(body.refusals.map(({ code }: { code: string }) => code)).toContain('unrated');
  });

  it('refuses sizes that the kind does not know, or that cannot be', async () => {
    expect(await refusedField({ dimensions: { lengthM: '3' } }, 'dimensions.lengthM')).toContain(
      'not measured by',
    );
    for (const size of ['0', '-1', 'x', '', '100001', true, null, { a: 1 }]) {
      const message = await refusedField({ dimensions: { jawMaximumMm: size } }, 'dimensions.jawMaximumMm');
      expect(message).toContain('more than 0 and at most 100000');
    }
    await enter({ dimensions: { jawMaximumMm: '100000' } }).expect(201);
    expect(await refusedField({ dimensions: [] }, 'dimensions')).toBe('write the dimensions by name');
  });

  it('refuses days in the future, days that do not exist, and use before manufacture', async () => {
    expect(await refusedField({ manufacturedOn: '2999-01-01' }, 'manufacturedOn')).toContain('in the future');
    expect(await refusedField({ firstUsedOn: '2025-02-30' }, 'firstUsedOn')).toContain('a day that exists');
    const backwards = { manufacturedOn: '2025-02-02', firstUsedOn: '2025-02-01' };
    expect(await refusedField(backwards, 'firstUsedOn')).toBe('is before the day of manufacture, 2025-02-02');
    await enter({ manufacturedOn: '2025-02-02', firstUsedOn: '2025-02-02' }).expect(201);
  });

  it('takes a shorter interval freely and a longer one with a reference only', async () => {
    // GB: lifting accessories every 6 months, other lifting equipment 12, or an examination scheme (LOLER 1998 reg 9(3)).
    const own = (months: unknown, reference?: string) => ({
      writtenSchemes: [{ type: 'thoroughExamination', months, ...(reference ? { reference } : {}) }],
    });
    await enter(own(1)).expect(201);
    expect(await refusedField(own(120), 'writtenSchemes[0].reference')).toContain(
      'a competent person drew up',
    );
    await enter(own(120, 'WS-7')).expect(201);
    for (const months of [0, -1, 1.5, 121, '6']) {
      expect(await refusedField(own(months), 'writtenSchemes[0].months')).toContain('whole months');
    }
    const twice = [1, 2].map((months) => ({ type: 'thoroughExamination', months }));
    expect(await refusedField({ writtenSchemes: twice }, 'writtenSchemes[1].type')).toContain(
      'one for each type',
    );
  });

  it('refuses a field it does not know', async () => {
    expect(await refusedField({ condition: 'scrapped' }, 'condition')).toContain(
      'not a field of this request',
    );
    const deep = { markings: [{ measure: 'workingLoadLimit', value: '5', unit: 'kg', colour: 'red' }] };
    expect(await refusedField(deep, 'markings[0].colour')).toContain('not a field of this request');
  });

  it('changes what the change names, clears what it sets to null, and leaves the rest', async () => {
    const item = await server.newItem({ notes: 'left hook stiff', manufacturedOn: '2024-05-06' });
    const change = { notes: null, tag: `${item.tag}-B` };
    const changed = await server.storeman
      .patch(`/api/items/${item.id}`)
      .set('if-match', '"v1"')
      .send(change)
      .expect(200);
    expect(changed.headers['etag']).toBe('"v2"');
    expect(changed.body).toMatchObject({
      notes: '',
      tag: `${item.tag}-B`,
      manufacturedOn: '2024-05-06',
      version: 2,
    });
    const lines = await server.crew.get(`/api/items/${item.id}/history`).expect(200);
    expect(lines.body.map(({ action }: { action: string }) => action)).toEqual([
      'item.edited',
      'item.created',
    ]);
  });

  it('lets a serial number become unknown and known again', async () => {
    const item = await server.newItem();
    const patch = (version: number, body: object) =>
      server.storeman.patch(`/api/items/${item.id}`).set('if-match', `"v${version}"`).send(body);
    await patch(1, { serial: null }).expect(400);
    expect((await patch(1, { serialUnknown: true }).expect(200)).body.serial).toBeNull();
    expect((await patch(2, { notes: 'plate worn' }).expect(200)).body.serial).toBeNull();
    expect((await patch(3, { serial: 'NEW-77' }).expect(200)).body.serial).toBe('NEW-77');
  });

  it('checks a change as a new entry, against everything but itself', async () => {
    const [item, other] = [await server.newItem(), await server.newItem()];
    const patch = (body: object) =>
      server.storeman.patch(`/api/items/${item.id}`).set('if-match', '"v1"').send(body);
    expect((await patch({ tag: other.tag }).expect(409)).body.code).toBe('tag_taken');
    expect((await patch({ kind: 'ratchetStrap' }).expect(400)).body.errors[0].field).toBe(
      'markings[0].measure',
    );
    for (const field of [
      'tag',
      'kind',
      'storeId',
      'maker',
      'markings',
      'dimensions',
      'labelLegible',
      'writtenSchemes',
    ]) {
      expect((await patch({ [field]: null }).expect(400)).body.errors[0].field).toBe(field);
    }
    await patch({ tag: item.tag.toLowerCase() }).expect(200);
  });

  it('refuses a change that does not say its version, or says an old one', async () => {
    const { id } = await server.newItem();
    const patch = () => server.storeman.patch(`/api/items/${id}`).send({ notes: 'x' });
    expect((await patch().expect(428)).body.code).toBe('say_which_version');
    await patch().set('if-match', 'seven').expect(400);
    const [one, two] = await Promise.all([patch().set('if-match', '"v1"'), patch().set('if-match', '"v1"')]);
    expect([one.status, two.status].sort()).toEqual([200, 412]);
  });

  it('answers a number that no item has with not found', async () => {
    for (const id of ['0', '-1', 'x', '1.5', '99999999', '99999999999', '2147483648']) {
      expect((await server.crew.get(`/api/items/${id}`).expect(404)).body.code).toBe('not_found');
      await server.crew.get(`/register/${id}`).expect(404);
    }
    await server.crew.get('/api/items/99999999/inspections').expect(404);
  });
});
