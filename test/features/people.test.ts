import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SetupCode } from '../../src/people/setup-code.js';
import { ENGINES } from '../support/engines.js';
import { startServer, type TestServer } from '../support/test-server.js';

describe.each(ENGINES)('people on %s', (engine) => {
  let server: TestServer;
  beforeAll(async () => void (server = await startServer(engine)));
  afterAll(() => server.close());

  const first = { name: 'First Person', signInName: 'First', password: 'a password of some length' };

  it('refuses everything but the first-run page before there is an account', async () => {
    const visitor = server.visitor();
    await visitor
      .get('/api/people')
      .expect(401)
      .expect('content-type', /application\/problem\+json/);
    await visitor.get('/people').expect(303).expect('location', '/sign-in?then=%2Fpeople');
    const signIn = await visitor.get('/sign-in').expect(303);
    expect(signIn.headers['location']).toBe('/first-run');
  });

  it('makes the first account with the setup code only, and only once', async () => {
    const visitor = server.visitor();
    await visitor
      .post('/api/first-account')
      .send({ ...first, setupCode: 'AAAA-AAAA-AAAA' })
      .expect(403);
    const setupCode = server.app.get(SetupCode).code;
    const made = await visitor
      .post('/api/first-account')
      .send({ ...first, setupCode })
      .expect(201);
    expect(made.body).toMatchObject({ signInName: 'first', roles: ['manager', 'storeman'] });
    const again = await visitor
      .post('/api/first-account')
      .send({ ...first, signInName: 'second', setupCode })
      .expect(409);
    expect(again.body.code).toBe('already_set_up');
  });

  it('signs in with name and password, and out again', async () => {
    const agent = server.visitor();
    const wrong = await agent
      .post('/api/session')
      .send({ signInName: 'first', password: 'not the password' })
      .expect(401);
    expect(wrong.body.code).toBe('wrong_sign_in');
    await agent.post('/api/session').send({ signInName: 'FIRST', password: first.password }).expect(204);
    await agent.get('/api/people').expect(200);
    await agent.post('/api/session/end').expect(204);
    await agent.get('/api/people').expect(401);
  });

  it('keeps each role to its own', async () => {
    const crew = await server.signedIn('crew');
    const refused = await crew.get('/api/people').expect(403);
    expect(refused.body.code).toBe('not_your_role');
  });

  it('ends the sessions of a closed account and keeps a last manager', async () => {
    const manager = server.visitor();
    await manager.post('/api/session').send({ signInName: 'first', password: first.password }).expect(204);
    const made = await manager
      .post('/api/people')
      .send({ name: 'Crew', signInName: 'crew.one', password: 'another long password', roles: ['crew'] })
      .expect(201);
    const crew = server.visitor();
    await crew
      .post('/api/session')
      .send({ signInName: 'crew.one', password: 'another long password' })
      .expect(204);
    await manager.patch(`/api/people/${made.body.id}`).send({ active: false }).expect(200);
    await crew.post('/api/session/end').expect(401);
    const people = await manager.get('/api/people').expect(200);
    const self = people.body.find((person: { signInName: string }) => person.signInName === 'first');
    const refused = await manager
      .patch(`/api/people/${self.id}`)
      .send({ roles: ['crew'] })
      .expect(409);
    expect(refused.body.code).toBe('last_manager');
  });

  it('refuses an unknown field, a short password and a foreign origin, in words', async () => {
    const manager = server.visitor();
    await manager.post('/api/session').send({ signInName: 'first', password: first.password }).expect(204);
    const refused = await manager
      .post('/api/people')
      .send({ name: 'X', signInName: 'x.y', password: 'short', roles: ['crew'], admin: true })
      .expect(400);
    expect(refused.body.errors).toEqual(
      expect.arrayContaining([
        { field: 'admin', message: 'is not a field of this request; check its spelling' },
        expect.objectContaining({
          field: 'password',
          message: expect.stringContaining('at least 12 characters'),
        }),
      ]),
    );
    await manager.post('/api/session/end').set('sec-fetch-site', 'cross-site').expect(403);
    await manager.post('/api/session/end').set('origin', 'https://elsewhere.example').expect(403);
  });

  it('takes effect once for one Idempotency-Key', async () => {
    const manager = server.visitor();
    await manager.post('/api/session').send({ signInName: 'first', password: first.password }).expect(204);
    const body = {
      name: 'Once',
      signInName: 'once.only',
      password: 'another long password',
      roles: ['crew'],
    };
    const send = () => manager.post('/api/people').set('idempotency-key', '"k-1"').send(body);
    const [one, two] = await Promise.all([send(), send()]);
    expect([one.status, two.status]).toEqual([201, 201]);
    expect(two.body).toEqual(one.body);
    const third = await send().expect(201);
    expect(third.body.signInName).toBe('once.only');
    await manager
      .post('/api/people')
      .set('idempotency-key', 'k-1')
      .send({ ...body, name: 'Other' })
      .expect(422);
  });
});
