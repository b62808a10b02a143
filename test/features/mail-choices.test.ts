import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type TestAgent from 'supertest/lib/agent.js';
import { Ledger } from '../../src/ledger/ledger.service.js';
import { MailChoices } from '../../src/reminders/preferences/mail-choices.service.js';
import { SYSTEM_ACTOR } from '../../src/people/actor.js';
import type { Role } from '../../src/people/role.js';
import { PeopleService } from '../../src/people/people.service.js';
import { ENGINES } from '../support/engines.js';
import { startGearServer, type GearServer } from '../support/gear-server.js';

/** Somebody signed in, with the address of what they chose. */
interface Someone {
  readonly id: number;
  readonly agent: TestAgent;
  readonly url: string;
}

describe.each(ENGINES)('what people hear by mail, on %s', (engine) => {
  let server: GearServer;
  let people = 0;
  beforeAll(async () => void (server = await startGearServer(engine)));
  afterAll(() => server.close());

  const someone = async (...roles: Role[]): Promise<Someone> => {
    people += 1;
    const agent = await server.signedIn(...roles);
    const id = Math.max(...(await server.app.get(PeopleService).list()).map((person) => person.id));
    return { id, agent, url: `/api/people/${id}/mail` };
  };
  const change = ({ agent, url }: Pick<Someone, 'agent' | 'url'>, version: number, input: object) =>
    agent.patch(url).set('if-match', `"v${version}"`).send(input);
  const newStore = async (name: string): Promise<number> => {
    const store = { name, address: '1 Quay', scheme: 'gb', timeZone: 'Europe/London' };
    return (await server.manager.post('/api/stores').send(store).expect(201)).body.id;
  };

  it('is nothing until there is an address, with what their roles suggest', async () => {
    const storeman = await someone('storeman');
    const read = await storeman.agent.get(storeman.url).expect(200).expect('etag', '"v0"');
    expect(read.body).toMatchObject({
      address: null,
      digest: 'daily',
      urgent: true,
      storeIds: null,
      version: 0,
    });
    const crew = await someone('crew');
    expect((await crew.agent.get(crew.url)).body).toMatchObject({ digest: 'none', urgent: false });
    const examiner = await someone('competentPerson');
    expect((await examiner.agent.get(examiner.url)).body).toMatchObject({ digest: 'daily', urgent: false });
  });

  it('is chosen by oneself, keeps what is not named, and stands in the history without the address', async () => {
    const one = await someone('crew');
    await change(one, 0, { address: 'T.Vell@Yard.EXAMPLE', urgent: true }).expect(200).expect('etag', '"v1"');
    const made = await change(one, 1, { storeIds: [server.storeId] }).expect(200);
    const now = { address: 'T.Vell@yard.example', digest: 'none', urgent: true, storeIds: [server.storeId] };
    expect(made.body).toMatchObject({ ...now, version: 2 });
    const known = await server.app.get(MailChoices, { strict: false }).people();
    expect(known.find(({ personId }) => personId === one.id)).toMatchObject({
      ...now,
      hasAddress: true,
      active: true,
      roles: ['crew'],
    });
    const [last, first] = await server.app.get(Ledger).newest(2, { kind: 'person', id: one.id });
    expect(first).toMatchObject({
      action: 'person.mailChanged',
      detail: { addressChanged: true, hasAddress: true },
    });
    expect(last?.detail).toEqual({
      digest: 'none',
      urgent: true,
      storeIds: [server.storeId],
      hasAddress: true,
      addressChanged: false,
    });
    expect(JSON.stringify([last, first])).not.toContain('example');
  });

  it('is no business of others, but of managers', async () => {
    const one = await someone('crew');
    for (const agent of [server.crew, server.storeman, server.examiner]) {
      const refused = await agent.get(one.url).expect(403);
      expect(refused.body.code).toBe('not_your_role');
      await change({ agent, url: one.url }, 0, { address: 'x@yard.example' }).expect(403);
      await agent.get(`/people/${one.id}/mail`).expect(403);
      await agent.post(`/people/${one.id}/mail`).type('form').send({ version: '0' }).expect(403);
      await agent.get('/people/mail').expect(403);
    }
    await server.visitor().get(one.url).expect(401);
    await server.visitor().get('/me/mail').expect(303).expect('location', '/sign-in?then=%2Fme%2Fmail');
    await change({ agent: server.manager, url: one.url }, 0, { address: 'x@yard.example' }).expect(200);
    await server.manager.get('/api/people/999999/mail').expect(404);
    await change({ agent: server.manager, url: '/api/people/999999/mail' }, 0, { urgent: true }).expect(404);
  });

  it('is changed by one of two who read the same version, be it the first or a later one', async () => {
    const one = await someone('crew');
    for (const version of [0, 1, 2]) {
      const answers = await Promise.all(
        ['a@yard.example', 'b@yard.example'].map((address) => change(one, version, { address })),
      );
      expect(answers.map(({ status }) => status).sort()).toEqual([200, 412]);
    }
    await one.agent.patch(one.url).send({ urgent: true }).expect(428);
  });

  it.each([
    ['address', 'x@yard.example\r\nBcc: all@yard.example'],
    ['address', 'x@yard.example, y@yard.example'],
    ['address', 'Ines <ines@yard.example>'],
    ['address', ''],
    ['address', 7],
    ['digest', 'hourly'],
    ['digest', null],
    ['urgent', 'yes'],
    ['urgent', null],
    ['storeIds', []],
    ['storeIds', [999_999]],
    ['storeIds', ['1']],
    ['storeIds', 'all'],
    ['surprise', 1],
  ])('refuses %s of %j, and names the field', async (field, value) => {
    const one = await someone('crew');
    const refused = await change(one, 0, { [field]: value }).expect(400);
    expect(refused.body.errors.map((error: { field: string }) => error.field)).toContain(field);
    await one.agent.get(one.url).expect('etag', '"v0"');
  });

  describe('while overdue gear must be heard of', () => {
    let storeId: number;
    let storeName: string;
    let listener: Someone;
    let another: Someone;

    // A store of its own with one item, of which one storeman hears and another could.
    beforeEach(async () => {
      storeName = `Shed ${people}`;
      storeId = await newStore(storeName);
      await server.newItem({ storeId });
      [listener, another] = [await someone('storeman'), await someone('storeman')];
      const hears = { address: 'listener@yard.example', storeIds: [storeId] };
      await change(listener, 0, hears).expect(200);
    });

    it.each([
      ['switches its digest off', { digest: 'none' }],
      ['takes its address away', { address: null }],
      ['turns to other stores', 'elsewhere'],
    ])('refuses that the last one who hears %s', async (_, input) => {
      const elsewhere = { storeIds: [server.storeId] };
      const refused = await change(listener, 1, input === 'elsewhere' ? elsewhere : Object(input)).expect(
        409,
      );
      expect(refused.body).toMatchObject({ code: 'overdue_unheard', storeIds: [storeId] });
      expect(refused.body.detail).toContain(`choose mail of ${storeName} first`);
      await listener.agent.get(listener.url).expect('etag', '"v1"');
      await change({ ...listener, agent: server.manager }, 1, { digest: 'none' }).expect(409);
    });

    it.each(['weekly', 'overdueOnly'])('lets the last one choose to hear less: %s', async (digest) => {
      const made = await change(listener, 1, { digest, urgent: false }).expect(200);
      expect(made.body).toMatchObject({ digest, urgent: false });
    });

    it('lets go of whoever is not the last, once another hears', async () => {
      await change(another, 0, { address: 'another@yard.example', storeIds: [storeId] }).expect(200);
      await change(listener, 1, { digest: 'none' }).expect(200);
      const refused = await change(another, 1, { digest: 'none' }).expect(409);
      expect(refused.body.code).toBe('overdue_unheard');
    });

    it('does not count crew, nor closed accounts', async () => {
      const crew = await someone('crew');
      const hears = { address: 'crew@yard.example', digest: 'daily', storeIds: [storeId] };
      await change(crew, 0, hears).expect(200);
      await change(another, 0, { address: 'another@yard.example', storeIds: [storeId] }).expect(200);
      await server.manager.patch(`/api/people/${another.id}`).send({ active: false }).expect(200);
      const refused = await change(listener, 1, { digest: 'none' }).expect(409);
      expect(refused.body.code).toBe('overdue_unheard');
    });

    it('refuses one of two who switch off at once', async () => {
      for (let round = 0; round < 8; round += 1) {
        const pair = [await someone('storeman'), await someone('competentPerson')];
        const shed = await newStore(`${storeName} pair ${round}`);
        await server.newItem({ storeId: shed });
        for (const one of pair)
          await change(one, 0, { address: 'x@yard.example', storeIds: [shed] }).expect(200);
        const answers = await Promise.all(pair.map((one) => change(one, 1, { digest: 'none' })));
        expect(answers.map(({ status }) => status).sort()).toEqual([200, 409]);
      }
    });

    it('asks nothing of a store without gear, or with nothing but scrap', async () => {
      const empty = await newStore(`${storeName} empty`);
      const scrap = await server.newItem({ storeId: empty });
      await server.examiner
        .post(`/api/items/${scrap.id}/scrap`)
        .send({ reason: 'worn out', howMadeUnusable: 'cut through' })
        .expect((answer) => expect(answer.status).toBeLessThan(300));
      await change(another, 0, { address: 'another@yard.example', storeIds: [empty] }).expect(200);
      const made = await change(another, 1, { digest: 'none' }).expect(200);
      expect(made.body.digest).toBe('none');
    });

    it('asks nothing of someone who was not told before', async () => {
      await server.manager
        .patch(`/api/people/${listener.id}`)
        .send({ roles: ['crew'] })
        .expect(200);
      const made = await change(listener, 1, { address: null }).expect(200);
      expect(made.body.address).toBeNull();
    });
  });

  it('is as it was after a refusal inside the transaction, for Tackleroom itself as well', async () => {
    const one = await someone('crew');
    const choices = server.app.get(MailChoices, { strict: false });
    const made = await choices.change(SYSTEM_ACTOR, one.id, { version: 0, input: { urgent: true } });
    expect(made).toMatchObject({ urgent: true, version: 1 });
    const stale = choices.change(SYSTEM_ACTOR, one.id, { version: 0, input: { urgent: false } });
    await expect(stale).rejects.toMatchObject({ code: 'changed_meanwhile' });
  });
});
