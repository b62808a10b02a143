import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SYSTEM_ACTOR } from '../../src/people/actor.js';
import { PeopleService } from '../../src/people/people.service.js';
import type { Role } from '../../src/people/role.js';
import { SetupCode } from '../../src/people/setup-code.js';
import { MailChoices } from '../../src/reminders/preferences/mail-choices.service.js';
import { ENGINES } from '../support/engines.js';
import { startGearServer, type GearServer } from '../support/gear-server.js';
import { startServer } from '../support/test-server.js';

const ASKS_FOR_ADDRESS = '<a href="/me/mail">Give an address</a> to be told when inspections fall due';

describe.each(ENGINES)('the pages of what people hear by mail, on %s', (engine) => {
  let server: GearServer;
  beforeAll(async () => void (server = await startGearServer(engine)));
  afterAll(() => server.close());

  const someone = async (...roles: Role[]) => {
    const agent = await server.signedIn(...roles);
    const id = Math.max(...(await server.app.get(PeopleService).list()).map((person) => person.id));
    const read = async () => (await agent.get(`/api/people/${id}/mail`).expect(200)).body;
    const send = (fields: object) => agent.post('/me/mail').type('form').send(fields);
    const open = async (path = '/me/mail') => (await agent.get(path).expect(200)).text;
    return { id, agent, read, send, open };
  };
  const newStore = async (name: string): Promise<number> => {
    const store = { name, address: '1 Quay', scheme: 'gb', timeZone: 'Europe/London' };
    return (await server.manager.post('/api/stores').send(store).expect(201)).body.id;
  };
  const form = (changes: object = {}) => ({
    version: '0',
    address: ' Ines@Yard.example ',
    digest: 'weekly',
    urgent: 'true',
    ...changes,
  });

  it('take an address and how much, and say in words what comes of it', async () => {
    const one = await someone('storeman');
    expect(await one.open()).toContain('No mail, as there is no address');
    const sent = await one.send(form()).expect(303);
    expect(sent.headers['location']).toBe('/me/mail');
    expect(await one.read()).toMatchObject({
      address: 'Ines@yard.example',
      digest: 'weekly',
      urgent: true,
      storeIds: null,
    });
    const page = await one.open();
    expect(page).toContain('One mail a week at most');
    expect(page).toContain('What cannot be switched off');
    expect(page).toMatch(/value="weekly" checked/);
    expect(page).toContain('No mail server is set: reminders stand in the due diary only.');
    await one.send({ version: '1', address: '', digest: 'daily' }).expect(303);
    expect(await one.read()).toMatchObject({ address: null, digest: 'daily', urgent: false, version: 2 });
  });

  it('take all stores or those that are ticked', async () => {
    const [first, second] = [await newStore('North shed'), await newStore('South <shed>')];
    const one = await someone('storeman');
    expect(await one.open()).toContain('South &lt;shed>');
    await one.send(form({ stores: 'some', 'storeIds[]': [String(first), String(second)] })).expect(303);
    expect((await one.read()).storeIds).toEqual([first, second]);
    await one.send(form({ version: '1', stores: 'some', 'storeIds[]': String(second) })).expect(303);
    expect((await one.read()).storeIds).toEqual([second]);
    await one.send(form({ version: '2', stores: 'all', 'storeIds[]': String(second) })).expect(303);
    expect((await one.read()).storeIds).toBeNull();
    const none = await one.send(form({ version: '3', stores: 'some' })).expect(400);
    expect(none.text).toContain('choose at least one store, or all');
    expect(none.text).toMatch(/value="some" checked/);
    const odd = await one.send(form({ version: '3', stores: 'some', 'storeIds[]': ['x', '1'] })).expect(400);
    expect(odd.text).toContain('storeIds-error');
  });

  it('keep what was typed beside what is wrong with it', async () => {
    const one = await someone('storeman');
    const typed = form({ address: 'Ines <ines@yard.example>', digest: 'overdueOnly', urgent: undefined });
    const refused = await one.send(typed).expect(400);
    expect(refused.text).toContain('value="Ines &lt;ines@yard.example>"');
    expect(refused.text).toContain('address-error');
    expect(refused.text).toMatch(/value="overdueOnly" checked/);
    expect(refused.text).not.toMatch(/name="urgent" value="true" checked/);
    for (const wrong of [{ digest: 'hourly' }, { version: '-1' }, { version: undefined }, { stores: 'few' }])
      await one.send(form(wrong)).expect(400);
    const injected = await one.send(form({ address: 'a@yard.example\r\nBcc: b@yard.example' })).expect(400);
    expect(injected.text).toContain('write one address');
    expect(await one.read()).toMatchObject({ version: 0 });
  });

  /** Takes every address away, so that nobody is left who hears of every store. */
  const silenceAll = async () => {
    const choices = server.app.get(MailChoices, { strict: false });
    for (const { personId, version, address } of await choices.people())
      if (address) await choices.change(SYSTEM_ACTOR, personId, { version, input: { address: null } });
  };

  it('say whom to ask first when overdue gear would go unheard', async () => {
    await silenceAll();
    const storeId = await newStore('Lonely yard');
    await server.newItem({ storeId });
    const one = await someone('storeman');
    await one.send(form({ stores: 'some', 'storeIds[]': String(storeId) })).expect(303);
    const off = form({ version: '1', digest: 'none', stores: 'some', 'storeIds[]': String(storeId) });
    const refused = await one.send(off).expect(409);
    expect(refused.text).toContain('Nobody would hear of overdue gear.');
    expect(refused.text).toContain('choose mail of Lonely yard first');
    expect(refused.text).toMatch(/value="none" checked/);
    const stale = await one.send(form({ version: '0' })).expect(412);
    expect(stale.text).toContain('Someone else changed this meanwhile.');
  });

  it('offer crew what crew may hear', async () => {
    const crew = await someone('crew');
    const page = await crew.open();
    expect(page).not.toContain('name="digest"');
    expect(page).toContain('Crew may hear of dangers.');
    await crew.send({ version: '0', address: 'crew@yard.example', urgent: 'true' }).expect(303);
    expect(await crew.read()).toMatchObject({ address: 'crew@yard.example', digest: 'none', urgent: true });
    expect(await crew.open('/')).not.toContain(ASKS_FOR_ADDRESS);
  });

  it('let a manager give others an address, at once after making an account', async () => {
    const account = { name: 'Rosa Quill', signInName: 'rosa.quill', password: 'a password of some length' };
    const fields = { ...account, 'roles[]': 'storeman' };
    const made = await server.manager.post('/people').type('form').send(fields).expect(303);
    const path = String(made.headers['location']);
    expect(path).toMatch(/^\/people\/\d+\/mail$/);
    expect((await server.manager.get(path).expect(200)).text).toContain('Mail of Rosa Quill');
    const sent = await server.manager.post(path).type('form').send(form()).expect(303);
    expect(sent.headers['location']).toBe(path);
    const overview = (await server.manager.get('/people/mail').expect(200)).text;
    expect(overview).toContain('Ines@yard.example');
    expect(overview).toContain(`href="${path}"`);
    const list = (await server.manager.get('/people').expect(200)).text;
    expect(list).toContain(`href="${path}"`);
    expect(list).toContain('href="/people/mail"');
    await server.manager.get('/people/999999/mail').expect(404);
  });

  it('are asked for on the start page until one has chosen, be it nothing', async () => {
    const one = await someone('competentPerson');
    expect(await one.open('/')).toContain(ASKS_FOR_ADDRESS);
    expect(await one.open('/')).not.toContain('No mail server is set');
    expect(await one.open('/')).toMatch(/href="\/me\/mail"[^>]*>Person \d+</);
    await one.send({ version: '0', address: '', digest: 'none' }).expect(303);
    expect(await one.open('/')).not.toContain(ASKS_FOR_ADDRESS);
    expect((await server.manager.get('/').expect(200)).text).toContain('No mail server is set');
  });
});

describe.each(ENGINES)('the first account on %s', (engine) => {
  it('is led to give an address', async () => {
    const server = await startServer(engine);
    const visitor = server.visitor();
    const account = { name: 'First Person', signInName: 'first', password: 'a password of some length' };
    const setupCode = server.app.get(SetupCode).code;
    await visitor
      .post('/first-run')
      .type('form')
      .send({ ...account, setupCode })
      .expect(303);
    expect((await visitor.get('/').expect(200)).text).toContain(ASKS_FOR_ADDRESS);
    await server.close();
  });
});
