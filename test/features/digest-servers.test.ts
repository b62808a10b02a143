import { createServer } from 'node:net';
import { once } from 'node:events';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Clock } from '../../src/clock.js';
import { DigestSweep } from '../../src/reminders/digest/digest-sweep.service.js';
import { DueIndex } from '../../src/reminders/due-index/due-index.service.js';
import { MailEntity } from '../../src/reminders/outbox/mail.entity.js';
import { addDays, type Day } from '../../src/rules/calendar/day.js';
import { Reads } from '../../src/storage/reads.js';
import { createApp } from '../../src/web/create-app.js';
import { ENGINES } from '../support/engines.js';
import { nextWeekday, startMailYard, type MailYard } from '../support/mail-yard.js';
import { catchMail } from '../support/smtp-catcher.js';

const morning = (day: Day) => `${day}T07:30:00.000Z`;

/** A port of this machine at which nothing listens. */
async function deadPort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  server.close();
  await once(server, 'close');
  if (address === null || typeof address === 'string') throw new Error('no port');
  return address.port;
}

describe.each(ENGINES)('digests while the mail server is away on %s', (engine) => {
  let yard: MailYard;
  beforeAll(async () => {
    const mail = {
      host: '127.0.0.1',
      port: await deadPort(),
      tls: 'none',
      from: 'gear@yard.example',
    } as const;
    yard = await startMailYard(engine, { mail });
    await yard.remind(yard.storeId, { leadDays: [7] });
    await yard.choose('storeman', { urgent: false });
  });
  afterAll(() => yard.close());

  it('are replaced by the next, which says all that they said', async () => {
    const monday = nextWeekday(yard.day(60), 1);
    for (const [tag, offset] of [
      ['AWAY-1', 7],
      ['AWAY-2', 8],
      ['AWAY-3', 9],
    ] as const)
      await yard.dueOn(tag, addDays(monday, offset));
    for (const offset of [0, 1, 2]) {
      const at = morning(addDays(monday, offset));
      expect(await yard.digests(at)).toBe(1);
      expect(await yard.deliver(at)).toBe(0);
    }
    const mails = await yard.mails('storeman');
    expect(mails.map(({ state }) => state)).toEqual(['replaced', 'replaced', 'waiting']);
    const text = mails.at(-1)?.plainText ?? '';
    for (const tag of ['AWAY-1', 'AWAY-2', 'AWAY-3']) expect(text).toContain(tag);
    expect(mails[0]?.plainText).not.toContain('AWAY-2');
  });

  it('are withdrawn when nothing is left to say', async () => {
    const monday = nextWeekday(yard.day(60), 1);
    const { body } = await yard.storeman.get('/api/items?text=AWAY').expect(200);
    for (const { id } of body.items)
      await yard.manager
        .post(`/api/items/${id}/scrap`)
        .send({ reason: 'sold', howMadeUnusable: 'cut up' })
        .expect(201);
    expect(await yard.digests(morning(addDays(monday, 3)))).toBe(0);
    expect((await yard.mails('storeman')).map(({ state }) => state)).toEqual([
      'replaced',
      'replaced',
      'replaced',
    ]);
  });
});

describe.each(ENGINES)('digests to an address that is refused, on %s', (engine) => {
  it('are overtaken by the next when they were given up, so that one stands for all', async () => {
    const catcher = await catchMail({ refuse: () => 550 });
    const mail = { host: 'localhost', port: catcher.port, tls: 'none', from: 'gear@yard.example' } as const;
    const yard = await startMailYard(engine, { mail });
    try {
      await yard.remind(yard.storeId, { leadDays: [7] });
      await yard.choose('storeman', { urgent: false });
      const monday = nextWeekday(yard.day(60), 1);
      await yard.dueOn('GONE-1', addDays(monday, 7));
      await yard.dueOn('GONE-2', addDays(monday, 8));
      for (const offset of [0, 1]) {
        const at = morning(addDays(monday, offset));
        expect(await yard.digests(at)).toBe(1);
        expect(await yard.deliver(at)).toBe(0);
      }
      const mails = await yard.mails('storeman');
      expect(mails.map(({ state }) => state)).toEqual(['replaced', 'dead']);
      for (const tag of ['GONE-1', 'GONE-2']) expect(mails.at(-1)?.plainText).toContain(tag);
    } finally {
      await yard.close();
      await catcher.close();
    }
  });
});

describe.each(ENGINES)('a server that can send no mail on %s', (engine) => {
  it('decides on none', async () => {
    const yard = await startMailYard(engine, {});
    try {
      await yard.choose('storeman', {});
      await yard.newItem();
      expect(await yard.digests(morning(yard.day(60)))).toBe(0);
      expect(await yard.mails('storeman')).toEqual([]);
    } finally {
      await yard.close();
    }
  });
});

describe('two servers on one PostgreSQL that look at the same time', () => {
  let yard: MailYard;
  let second: NestFastifyApplication;
  beforeAll(async () => {
    yard = await startMailYard('postgres');
    second = await createApp(yard.settings, { quiet: true });
    await second.init();
  });
  afterAll(async () => {
    await second.close();
    await yard.close();
  });

  it('decide on one mail per person and day', async () => {
    const readers = ['storeman', 'manager', 'examiner', 'secondExaminer'] as const;
    for (const reader of readers) await yard.choose(reader, { urgent: false });
    await yard.newItem({ tag: 'TWO-1' });
    await yard.app.get(DueIndex, { strict: false }).refresh();
    const monday = nextWeekday(yard.day(60), 1);
    for (const offset of [0, 1, 2, 3, 4]) {
      const at = morning(addDays(monday, offset));
      const sweep = (app: NestFastifyApplication) =>
        app.get(Clock).at(at, () => app.get(DigestSweep, { strict: false }).run());
      const decided = await Promise.all([sweep(yard.app), sweep(second)]);
      expect(decided.reduce((sum, mails) => sum + mails, 0)).toBe(readers.length);
      expect(await yard.app.get(Reads).manager.countBy(MailEntity, { decidedAt: at })).toBe(readers.length);
    }
  });
});
