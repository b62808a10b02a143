import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SYSTEM_ACTOR } from '../../src/people/actor.js';
import { PeopleService } from '../../src/people/people.service.js';
import type { Role } from '../../src/people/role.js';
import { MailChoices } from '../../src/reminders/preferences/mail-choices.service.js';
import { MailWarnings } from '../../src/reminders/preferences/mail-warnings.service.js';
import { ENGINES } from '../support/engines.js';
import { startGearServer, type GearServer } from '../support/gear-server.js';

const MAIL = { host: '127.0.0.1', port: 1, tls: 'none', from: 'tackleroom@yard.example' } as const;

describe.each(ENGINES)('who is left to hear of overdue gear, on %s', (engine) => {
  let server: GearServer;
  let ids: { storeman: number; manager: number };
  beforeAll(async () => {
    server = await startGearServer(engine, { mail: MAIL });
    const people = await server.app.get(PeopleService).list();
    const idOf = (role: Role) => people.find(({ roles }) => roles.includes(role))?.id ?? 0;
    ids = { storeman: idOf('storeman'), manager: idOf('manager') };
  });
  afterAll(() => server.close());

  const warnings = () => server.app.get(MailWarnings, { strict: false }).list();
  const choose = async (personId: number, input: object) => {
    const choices = server.app.get(MailChoices, { strict: false });
    const { version } = await choices.of(SYSTEM_ACTOR, personId);
    return choices.change(SYSTEM_ACTOR, personId, { version, input });
  };
  const nobody = 'Nobody is told of overdue gear at Yard: give a manager a mail address.';

  it('is no matter of a store without gear', async () => {
    expect(await warnings()).toEqual([]);
  });

  it('is nobody while nobody has an address, as four pages say', async () => {
    await server.newItem();
    expect(await warnings()).toEqual([{ code: 'nobodyTold', storeNames: ['Yard'] }]);
    for (const path of ['/', '/me/mail', '/people/mail', `/people/${ids.storeman}/mail`]) {
      expect((await server.manager.get(path).expect(200)).text, path).toContain(nobody);
    }
    expect((await server.storeman.get('/').expect(200)).text).not.toContain(nobody);
    expect((await server.storeman.get('/me/mail').expect(200)).text).toContain(nobody);
  });

  it('is whoever chose to, and then there is nothing to warn of', async () => {
    await choose(ids.storeman, { address: 'storeman@yard.example' });
    expect(await warnings()).toEqual([]);
  });

  it.each([
    ['the account is closed', { active: false }, { active: true }],
    ['the role is taken away', { roles: ['crew'] }, { roles: ['storeman'] }],
  ])('is every manager, whatever they chose, when %s', async (_, change, undo) => {
    await choose(ids.manager, { address: 'manager@yard.example', digest: 'none' });
    await server.manager.patch(`/api/people/${ids.storeman}`).send(change).expect(200);
    expect(await warnings()).toEqual([{ code: 'toldByDefault', storeNames: ['Yard'] }]);
    const page = await server.manager.get('/me/mail').expect(200);
    expect(page.text).toContain('managers hear of it whatever they chose');
    await choose(ids.manager, { address: null });
    expect(await warnings()).toEqual([{ code: 'nobodyTold', storeNames: ['Yard'] }]);
    await server.manager.patch(`/api/people/${ids.storeman}`).send(undo).expect(200);
    expect(await warnings()).toEqual([]);
  });
});
