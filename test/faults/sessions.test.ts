import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Clock } from '../../src/clock.js';
import { SESSION_COOKIE } from '../../src/people/session-cookie.js';
import { ENGINES } from '../support/engines.js';
import { startGearYard, type GearYard } from '../support/gear-yard.js';
import { hostileClient } from '../support/hostile-client.js';
import { multipartFile } from '../support/multipart.js';
import { expectProblemDetails } from '../support/problem-details.js';

const MIB = 1024 * 1024;
const HOUR_MS = 3_600_000;

describe.each(ENGINES)('sessions and large files on %s', (engine) => {
  let yard: GearYard;
  beforeAll(async () => void (yard = await startGearYard(engine)));
  afterAll(() => yard.close());

  const statusWith = async (cookie: string) =>
    (await yard.app.inject({ method: 'GET', url: '/api/items', headers: { cookie } })).statusCode;

  it('knows no cookie but its own', async () => {
    const { cookie } = await hostileClient(yard.app, ['crew']);
    expect(await statusWith(cookie)).toBe(200);
    const tampered = [cookie.slice(0, -1), `${cookie}A`, cookie.toUpperCase(), `${SESSION_COOKIE}=`];
    const made = ['%00', '%ff%fe', "' OR 1=1 --", 'x'.repeat(4_000), '"'].map(
      (text) => `${SESSION_COOKIE}=${text}`,
    );
    for (const wrong of [...tampered, ...made]) expect(await statusWith(wrong), wrong.slice(0, 60)).toBe(401);
  });

  it('knows a cookie no more once it was signed out', async () => {
    const client = await hostileClient(yard.app, ['crew']);
    expect((await client.json('POST', '/api/session/end', {})).status).toBe(204);
    expect(await statusWith(client.cookie)).toBe(401);
    const page = await client.raw({ method: 'GET', url: '/register' });
    expect([page.status, page.headers['location']]).toEqual([303, '/sign-in?then=%2Fregister']);
  });

  // OWASP ASVS 5.0, 7.2.4: signing in gives a new token and ends the old one.
  it('knows the cookie of whoever held the browser before no more once another signs in', async () => {
    const account = { name: 'Next One', signInName: 'next.one', password: 'a long enough password' };
    await yard.manager
      .post('/api/people')
      .send({ ...account, roles: ['crew'] })
      .expect(201);
    const { name: _name, ...credentials } = account;
    const elsewhere = await hostileClient(yard.app, ['crew']);
    for (const [former, signIn] of [
      [await hostileClient(yard.app, ['crew']), 'program'],
      [await hostileClient(yard.app, ['crew']), 'page'],
    ] as const) {
      const wrong = { ...credentials, password: 'not the password' };
      expect((await former.json('POST', '/api/session', wrong)).status).toBe(401);
      expect(await statusWith(former.cookie), 'a sign-in that failed ends nothing').toBe(200);
      const answer =
        signIn === 'program'
          ? await former.json('POST', '/api/session', credentials)
          : await former.form('/sign-in', Object.entries(credentials));
      const [, next] = /^([^;]+);/.exec(String(answer.headers['set-cookie'])) ?? [];
      expect(next).toMatch(new RegExp(`^${SESSION_COOKIE}=.{43}$`));
      expect(await statusWith(next ?? '')).toBe(200);
      expect(await statusWith(former.cookie), signIn).toBe(401);
    }
    expect(await statusWith(elsewhere.cookie)).toBe(200);
  });

  it('knows a cookie for a week while it is used, and for twelve hours while it is not', async () => {
    const clock = yard.app.get(Clock);
    const signedInAt = Date.now();
    const statusAfter = (cookie: string, hours: number) =>
      clock.at(new Date(signedInAt + hours * HOUR_MS).toISOString(), () => statusWith(cookie));
    const left = await hostileClient(yard.app, ['crew']);
    expect(await statusAfter(left.cookie, 12.01)).toBe(401);
    const used = await hostileClient(yard.app, ['crew']);
    for (let hours = 11; hours < 7 * 24; hours += 11)
      expect(await statusAfter(used.cookie, hours), `after ${hours} h`).toBe(200);
    expect(await statusAfter(used.cookie, 7 * 24 + 0.01)).toBe(401);
  });

  it('hands out a cookie that lives as long as a session can, and that no script reads', async () => {
    const { signInName } = await hostileClient(yard.app, ['crew']);
    const credentials = { signInName, password: 'a long enough password' };
    const answer = await yard.app.inject({ method: 'POST', url: '/api/session', payload: credentials });
    const [cookie] = answer.cookies;
    expect(cookie).toMatchObject({ maxAge: 7 * 24 * 60 * 60, httpOnly: true, sameSite: 'Lax', path: '/' });
    const ended = await yard.app.inject({
      method: 'POST',
      url: '/api/session/end',
      headers: { cookie: `${SESSION_COOKIE}=${cookie?.value}` },
    });
    const [cleared] = ended.cookies;
    expect([cleared?.value, Number(cleared?.expires)]).toEqual(['', 0]);
  });

  it('takes a role away at once, and an account too', async () => {
    const client = await hostileClient(yard.app, ['manager', 'crew']);
    const change = (body: object) =>
      yard.manager.patch(`/api/people/${client.personId}`).send(body).expect(200);
    expect((await client.raw({ method: 'GET', url: '/api/people' })).status).toBe(200);
    await change({ roles: ['crew'] });
    expect((await client.raw({ method: 'GET', url: '/api/people' })).status).toBe(403);
    expect(await statusWith(client.cookie)).toBe(200);
    await change({ active: false });
    expect(await statusWith(client.cookie)).toBe(401);
    await change({ active: true });
    expect(await statusWith(client.cookie), 'a session that was ended stays so').toBe(401);
  });

  it('refuses a file of 50 MB and lives on', async () => {
    const client = await hostileClient(yard.app, ['storeman']);
    const file = multipartFile(Buffer.alloc(50 * MIB, 'a,b\n'), 'large.csv');
    const program = await client.raw({ method: 'POST', url: '/api/register/import', ...file });
    expect(expectProblemDetails(program, 'upload')).toMatchObject({ status: 413, code: 'file_too_large' });
    const page = await client.raw({ method: 'POST', url: '/register/import', ...file });
    expect([page.status, page.contentType]).toEqual([413, 'text/html; charset=utf-8']);
    expect((await client.raw({ method: 'GET', url: '/health' })).status).toBe(200);
    expect(await statusWith(client.cookie)).toBe(200);
  });

  it('refuses broken uploads', async () => {
    const client = await hostileClient(yard.app, ['storeman']);
    const { headers } = multipartFile(Buffer.from(''), 'x.csv');
    const files = [Buffer.alloc(0), Buffer.from([0, 1, 2, 255]), Buffer.from('PK\u0003\u0004 broken')];
    const requests = files.map((content) => multipartFile(content, '..\\..\\\u0007evil.xlsx'));
    for (const request of [...requests, { headers, payload: Buffer.from('no boundary at all') }]) {
      const answer = await client.raw({ method: 'POST', url: '/api/register/import', ...request });
      expectProblemDetails(answer, String(request.payload).slice(0, 60));
      expect(answer.status).toBeGreaterThanOrEqual(400);
    }
  });
});
