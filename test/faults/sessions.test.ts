import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SESSION_COOKIE } from '../../src/people/session-cookie.js';
import { ENGINES } from '../support/engines.js';
import { startGearYard, type GearYard } from '../support/gear-yard.js';
import { hostileClient } from '../support/hostile-client.js';
import { multipartFile } from '../support/multipart.js';
import { expectProblemDetails } from '../support/problem-details.js';

const MIB = 1024 * 1024;

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
