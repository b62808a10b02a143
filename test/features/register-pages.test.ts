import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ENGINES } from '../support/engines.js';
import { startGearServer, type GearServer } from '../support/gear-server.js';

describe.each(ENGINES)('the pages of the register on %s', (engine) => {
  let server: GearServer;
  beforeAll(async () => void (server = await startGearServer(engine)));
  afterAll(() => server.close());

  const strap = (differences: object = {}) => ({
    kind: 'ratchetStrap',
    tag: 'RS-1',
    storeId: String(server.storeId),
    maker: 'Harrow Works',
    serial: 'S 77',
    labelLegible: 'true',
    'markings[0].measure': 'lashingCapacity',
    'markings[0].value': '2500',
    'markings[0].unit': 'daN',
    'markings[0].condition': '',
    'dimensions.lengthM': '6.5',
    'writtenSchemes[0].type': 'thoroughExamination',
    'writtenSchemes[0].months': '',
    notes: '',
    ...differences,
  });
  const enter = (fields: object) => server.storeman.post('/register/new').type('form').send(fields);

  it('asks for the kind first, then for what that kind is marked and measured by', async () => {
    expect((await server.storeman.get('/register/new').expect(200)).text).toContain(
      '/register/new?kind=ratchetStrap',
    );
    const form = (await server.storeman.get('/register/new?kind=ratchetStrap').expect(200)).text;
    expect(form).toContain('name="dimensions.lengthM"');
    expect(form).toContain('<option value="daN"');
    expect(form).not.toContain('<option value="kg"');
    await server.storeman.get('/register/new?kind=hammer').expect(404);
    await server.crew.get('/register/new').expect(403);
  });

  it('shows the form again with what was typed and what is wrong beside it', async () => {
    const refused = await enter(strap({ 'markings[0].unit': 'kg', 'dimensions.lengthM': '-2' })).expect(400);
    expect(refused.text).toContain('id="markings[0].unit-error"');
    expect(refused.text).toContain('id="dimensions.lengthM-error"');
    expect(refused.text).toContain('value="S 77"');
    expect((await server.crew.get('/api/items').expect(200)).body.items).toEqual([]);
  });

  it('enters an item, once however often the button is pressed, and opens it', async () => {
    const fields = strap({ _once: 'press-1' });
    const first = await enter(fields).expect(303);
    const second = await enter(fields);
    // Pressed again before the first answer is on record, it is told that this was done already.
    expect([303, 409]).toContain(second.status);
    expect(second.headers['location'] ?? first.headers['location']).toBe(first.headers['location']);
    const found = await server.crew.get('/api/items').query({ text: 'RS-1' }).expect(200);
    expect(found.body.items).toHaveLength(1);
    const page = (await server.crew.get(first.headers['location'] ?? '').expect(200)).text;
    expect(page).toContain('RS-1');
    expect(page).toContain('6.5');
    expect(page).toContain('Not to be used today');
  });

  it('offers to say that two serial numbers that look alike are two', async () => {
    await enter(strap({ tag: 'RS-8', serial: 'B8' })).expect(303);
    const refused = await enter(strap({ tag: 'RS-9', serial: '8B' })).expect(409);
    expect(refused.text).toContain('name="acceptLookAlike"');
    await enter(strap({ tag: 'RS-9', serial: '8B', acceptLookAlike: 'true' })).expect(303);
  });

  it('changes an item from its form: what was emptied is cleared, what was not ticked is not so', async () => {
    const { id } = await server.newItem({
      notes: 'stiff',
      manufacturedOn: '2024-01-02',
      certificateOnFile: true,
    });
    const form = (await server.storeman.get(`/register/${id}/edit`).expect(200)).text;
    expect(form).toContain('value="2024-01-02"');
    expect(form).toContain('name="version" value="1"');
    const { tag, serial } = (await server.crew.get(`/api/items/${id}`)).body;
    const fields = {
      version: '1',
      kind: 'panelLifter',
      tag,
      storeId: String(server.storeId),
      maker: 'New Maker',
      serial,
      notes: '',
    };
    const edit = () => server.storeman.post(`/register/${id}/edit`).type('form').send(fields);
    await edit().expect(303).expect('location', `/register/${id}`);
    expect((await server.crew.get(`/api/items/${id}`)).body).toMatchObject({
      maker: 'New Maker',
      notes: '',
      manufacturedOn: null,
      certificateOnFile: false,
      labelLegible: false,
      markings: [],
      version: 2,
    });
    expect((await edit().expect(412)).text).toContain('Someone else changed this meanwhile');
    await server.crew.get(`/register/${id}/edit`).expect(403);
  });

  it('writes what people typed as text, never as markup', async () => {
    const made = await enter(strap({ tag: 'X<b>1', serial: '"><script>7', notes: '<img src=x>' })).expect(
      303,
    );
    const page = (await server.crew.get(made.headers['location'] ?? '').expect(200)).text;
    expect(page).not.toContain('<script>7');
    expect(page).not.toContain('<img src=x>');
    expect(page).toContain('X&lt;b>1');
  });
});
