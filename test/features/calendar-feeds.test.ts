import { createHash } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Ledger } from '../../src/ledger/ledger.service.js';
import { Reads } from '../../src/storage/reads.js';
import { ENGINES } from '../support/engines.js';
import { startGearServer, type GearServer } from '../support/gear-server.js';

describe.each(ENGINES)('calendar feeds on %s', (engine) => {
  let server: GearServer;
  beforeAll(async () => void (server = await startGearServer(engine)));
  afterAll(() => server.close());

  async function newFeed(input: object = {}, agent = server.storeman): Promise<{ id: number; path: string }> {
    const { body } = await agent.post('/api/calendar-feeds').send(input).expect(201);
    return { id: body.id, path: new URL(body.address as string).pathname };
  }
  const secretOf = (path: string): string => path.replace('/calendar/', '').replace('.ics', '');

  it('are read by whoever has the address, with 256 bits in it, of which only a fingerprint is kept', async () => {
    const { id, path } = await newFeed({ storeId: server.storeId });
    await server.visitor().get(path).expect(200).expect('content-type', 'text/calendar; charset=utf-8');
    const secret = secretOf(path);
    expect(Buffer.from(secret, 'base64url')).toHaveLength(32);
    const [kept] = await server.app
      .get(Reads)
      .manager.query<Record<string, unknown>[]>('SELECT * FROM calendar_feed WHERE id = $1', [id]);
    // FIPS 180-4, by Node's own crypto.
    expect(kept?.['secret_hash']).toBe(createHash('sha256').update(secret).digest('hex'));
    const [entry] = await server.app.get(Ledger).newest(1);
    expect(entry).toMatchObject({
      action: 'person.calendarMade',
      detail: { feedId: id, storeId: server.storeId },
    });
    expect(JSON.stringify([kept, entry])).not.toContain(secret);
  });

  it('are kept secret from the answers that are kept, and are made once', async () => {
    const send = () =>
      server.storeman.post('/api/calendar-feeds').set('idempotency-key', `feed-once-${engine}`).send({});
    const first = await send().expect(201);
    const again = await send().expect(201);
    expect(again.text).toBe('');
    const claims = await server.app.get(Reads).manager.query<object[]>('SELECT * FROM request_claim');
    expect(claims.length).toBeGreaterThan(0);
    expect(JSON.stringify(claims)).not.toContain(secretOf(new URL(first.body.address as string).pathname));
    const { body } = await server.storeman.get('/api/calendar-feeds').expect(200);
    expect(body.filter(({ id }: { id: number }) => id >= first.body.id)).toHaveLength(1);
  });

  it('give every wrong address the one answer of a page that is not there', async () => {
    const { id, path } = await newFeed();
    const secret = secretOf(path);
    await server.storeman.post(`/api/calendar-feeds/${id}/revocation`).expect(204);
    const wrong = [
      path,
      `/calendar/${'A'.repeat(43)}.ics`,
      `/calendar/${secret.slice(1)}.ics`,
      `/calendar/${secret}A.ics`,
      `/calendar/${secret}`,
      `/calendar/${secret}.ICS`,
      `/calendar/${secret}.ics%2f`,
      `/calendar/..%2f..%2f${secret}.ics`,
      `/calendar/%2e%2e%2fetc.ics`,
      `/calendar/${encodeURIComponent("' OR 1=1 --")}.ics`,
      '/calendar/%F0%9F%8F%97.ics',
      '/calendar/.ics',
    ];
    const answers = [];
    for (const url of wrong) {
      const { status, text } = await server.visitor().get(url);
      answers.push({ status, text });
    }
    for (const answer of answers) expect(answer).toEqual({ status: 404, text: answers[0]?.text });
    // Longer than any part of an address may be: no route gets to see it.
    const huge = await server.visitor().get(`/calendar/${secret}${'A'.repeat(5_000)}.ics`);
    expect(huge.status).toBe(414);
  });

  it('go dark with the account, and with the role', async () => {
    const agent = await server.signedIn('competentPerson');
    const { path } = await newFeed({}, agent);
    const { body } = await agent.get('/api/calendar-feeds').expect(200);
    const account = `/api/people/${body[0].personId}`;
    for (const [change, status] of [
      [{ roles: ['crew'] }, 404],
      [{ roles: ['competentPerson'] }, 200],
      [{ active: false }, 404],
      [{ active: true }, 200],
    ] as const) {
      await server.manager.patch(account).send(change).expect(200);
      expect((await server.visitor().get(path)).status).toBe(status);
    }
  });

  it('are for storeman, competent person and manager; a manager sees and revokes all', async () => {
    await server.crew.get('/api/calendar-feeds').expect(403);
    await server.crew.post('/api/calendar-feeds').send({}).expect(403);
    await server.crew.get('/calendar').expect(403);
    await server.visitor().get('/calendar').expect(303);
    const { id, path } = await newFeed({}, server.examiner);
    const ids = async (agent: typeof server.manager) =>
      ((await agent.get('/api/calendar-feeds').expect(200)).body as { id: number }[]).map((feed) => feed.id);
    expect(await ids(server.manager)).toContain(id);
    expect(await ids(server.examiner)).toContain(id);
    expect(await ids(server.storeman)).not.toContain(id);
    await server.storeman.post(`/api/calendar-feeds/${id}/revocation`).expect(404);
    await server.visitor().get(path).expect(200);
    await server.manager.post(`/api/calendar-feeds/${id}/revocation`).expect(204);
    await server.visitor().get(path).expect(404);
    await server.manager.post(`/api/calendar-feeds/${id}/revocation`).expect(409);
    const [entry] = await server.app.get(Ledger).newest(1);
    expect(entry).toMatchObject({ action: 'person.calendarRevoked', detail: { feedId: id, storeId: null } });
  });

  it('are of stores that there are, and no more than 20 to a person', async () => {
    const agent = await server.signedIn('storeman');
    const refused = await agent.post('/api/calendar-feeds').send({ storeId: 999_999 }).expect(400);
    expect(refused.body.errors[0].field).toBe('storeId');
    for (let made = 0; made < 20; made += 1) await newFeed({}, agent);
    const { body } = await agent.post('/api/calendar-feeds').send({}).expect(409);
    expect(body.code).toBe('not_allowed_now');
  });

  it('are made on their page, which shows the address once', async () => {
    const agent = await server.signedIn('storeman');
    const made = await agent.post('/calendar').type('form').send({ storeId: '' }).expect(303);
    expect(made.headers['location']).toBe('/calendar');
    // Out of reach of scripts and other sites.
    expect(String(made.headers['set-cookie'])).toMatch(/HttpOnly/);
    expect(String(made.headers['set-cookie'])).toMatch(/SameSite=Strict/);
    const shown = await agent.get('/calendar').expect(200).expect('cache-control', 'no-store');
    const [address = ''] = /http:\/\/[^"]+\/calendar\/[\w-]{43}\.ics/.exec(shown.text) ?? [];
    await server.visitor().get(new URL(address).pathname).expect(200);
    // RFC 1122 section 3.2.1.3: 127.0.0.0/8 never leaves the machine.
    expect(new URL(address).hostname).toBe('127.0.0.1');
    expect(shown.text).toContain('Only this computer reaches that address.');
    const again = await agent.get('/calendar').expect(200);
    expect(again.text).not.toMatch(/\/calendar\/[\w-]{43}\.ics/);
    expect(again.text).toContain('What I am told');
    const [, id] = /action="\/calendar\/(\d+)\/revoke"/.exec(again.text) ?? [];
    await agent.post(`/calendar/${id}/revoke`).expect(303);
    await server.visitor().get(new URL(address).pathname).expect(404);
    expect((await agent.get('/calendar').expect(200)).text).toContain('You have no feed yet.');
  });
});
