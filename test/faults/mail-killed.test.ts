import { once } from 'node:events';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Client } from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PersonEntity } from '../../src/people/person.entity.js';
import { MailEntity } from '../../src/reminders/outbox/mail.entity.js';
import { MailChoiceEntity } from '../../src/reminders/preferences/mail-choice.entity.js';
import { ReminderRuleEntity } from '../../src/reminders/preferences/reminder-rule.entity.js';
import type { Settings } from '../../src/settings.js';
import { Reads } from '../../src/storage/reads.js';
import { UnitOfWork } from '../../src/storage/unit-of-work.js';
import { startBuiltServer, type BuiltServer } from '../support/built-server.js';
import { freshDatabase } from '../support/engines.js';
import { lifter } from '../support/gear-server.js';
import { startMailApp } from '../support/mail-app.js';
import { seededRandom } from '../support/seeded-random.js';
import { LOOPBACK } from '../support/smtp-certificate.js';
import { catchMail, type SmtpCatcher } from '../support/smtp-catcher.js';

const PEOPLE = 500;
/** How often it is killed, and how many of the kills come while the digests are being decided. */
const TRIALS = [
  { engine: 'sqlite', kills: 20, earlyKills: 6 },
  { engine: 'postgres', kills: 7, earlyKills: 2 },
] as const;
/** A killed server had at most so many mails in hand. */
const LANES = 2;
const ACCOUNT = { user: 'gear', password: 'a pass phrase' };

/** A mail as it arrived, with the life of the server that sent it. */
interface Arrival {
  readonly life: number;
  readonly to: string;
  readonly messageId: string;
}

describe.each(TRIALS)(
  'a server on $engine that is killed $kills times while it tells 500 people',
  (trial) => {
    const { engine, kills, earlyKills } = trial;
    const random = seededRandom(20261126);
    const arrivals: Arrival[] = [];
    /** What a server sent may be read when it is dead already and the next one runs, so its connection tells. */
    const lifeOfConnection = new Map<string, number>();
    let life = 0;
    let afterArrival: () => void = () => undefined;
    let catcher: SmtpCatcher;
    let settings: Settings;
    let remove: () => Promise<void>;

    beforeAll(async () => {
      ({ settings, remove } = await freshDatabase(engine));
      writeFileSync(join(settings.dataDir, 'authority.pem'), LOOPBACK.cert);
      catcher = await catchMail({
        secure: true,
        account: ACCOUNT,
        onConnect: (connection) => lifeOfConnection.set(connection, life),
        afterData: ({ to, parsed, connection }) => {
          const sentIn = lifeOfConnection.get(connection);
          if (sentIn === undefined) throw new Error('A mail came by a connection that nobody opened.');
          arrivals.push({ life: sentIn, to: to.join(), messageId: parsed.messageId ?? '' });
          afterArrival();
          return 'take';
        },
      });
      await prepare(settings);
    });
    afterAll(async () => {
      await catcher.close();
      await remove();
    });

    const start = (): Promise<BuiltServer> => {
      life += 1;
      const { dataDir, databaseUrl = '' } = settings;
      return startBuiltServer({
        dataDir,
        environment: {
          DATABASE_URL: databaseUrl,
          SMTP_HOST: 'localhost',
          SMTP_PORT: String(catcher.port),
          SMTP_TLS: 'implicit',
          SMTP_USER: ACCOUNT.user,
          SMTP_PASSWORD: ACCOUNT.password,
          MAIL_FROM: 'gear@yard.example',
          // The way that Node.js itself gives to trust an authority of one's own.
          NODE_EXTRA_CA_CERTS: join(dataDir, 'authority.pem'),
        },
      });
    };

    it('tells every one of them, and twice only what the mail server had taken as it died', async () => {
      for (let kill = 0; kill < kills; kill += 1) {
        const server = await start();
        const dead = once(server.process, 'exit');
        const strike = () => void server.process.kill('SIGKILL');
        const delay = random.whole(0, kill < earlyKills ? 900 : 12);
        if (kill < earlyKills) setTimeout(strike, delay);
        else strikeAfter(random.whole(1, 25), () => setTimeout(strike, delay));
        await dead;
        if (settings.databaseUrl !== undefined) await letClaimsRunOut(settings.databaseUrl);
      }
      afterArrival = () => undefined;
      const last = await start();
      await expect.poll(arrived, { timeout: 120_000, interval: 100 }).toBe(PEOPLE);
      await last.stop();

      const rows = await keptMails(settings);
      expect(rows.filter(({ state }) => state !== 'sent')).toEqual([]);
      expect(rows.map(({ toAddress }) => toAddress).sort()).toEqual(everyone().sort());
      for (const { toAddress, messageId } of rows) {
        const copies = arrivals.filter(({ to }) => to === toAddress);
        expect(new Set(copies.map((copy) => copy.messageId)), toAddress).toEqual(new Set([messageId]));
      }
      for (let killed = 1; killed <= kills; killed += 1)
        expect(sentAgainAfter(killed).length, `life ${killed}`).toBeLessThanOrEqual(LANES);
      expect(sentAgainAfter(life)).toEqual([]);
      expect(arrivals.filter((arrival) => arrival.life <= kills).length).toBeGreaterThan(kills);
    }, 300_000);

    function strikeAfter(mails: number, strike: () => void): void {
      let left = mails;
      afterArrival = () => {
        left -= 1;
        if (left === 0) strike();
      };
    }

    function arrived(): number {
      return new Set(arrivals.map(({ to }) => to)).size;
    }

    /** Whose mail arrived in one life of the server and then again, in that life or a later one. */
    function sentAgainAfter(killed: number): string[] {
      return arrivals
        .filter(
          ({ life: first, to }, index) =>
            first === killed && arrivals.slice(index + 1).some((later) => later.to === to),
        )
        .map(({ to }) => to);
    }
  },
);

function everyone(): string[] {
  return Array.from({ length: PEOPLE }, (_, index) => `person${index}@yard.example`);
}

/**
 * On PostgreSQL another server may be at it, so what a killed one had in hand is left alone for three minutes. Nobody
 * waits for them here: once the database has done with the dead server, its claims are made to lie in the past.
 */
async function letClaimsRunOut(databaseUrl: string): Promise<void> {
  const client = new Client({ connectionString: databaseUrl });
  await client.connect();
  const connections = async () => {
    const { rows } = await client.query<{ count: string }>(
      'SELECT count(*) FROM pg_stat_activity WHERE datname = current_database() AND pid <> pg_backend_pid()',
    );
    return Number(rows[0]?.count);
  };
  await expect.poll(connections, { timeout: 10_000 }).toBe(0);
  await client.query(`UPDATE mail SET claimed_until = $1 WHERE claimed_until IS NOT NULL`, [
    '2026-01-01T00:00:00.000Z',
  ]);
  await client.end();
}

/** A store where it is about noon, with one item that was never examined, and 500 people who hear of it. */
async function prepare(settings: Settings): Promise<void> {
  const mails = await startMailApp(settings);
  const [manager, storeman] = [await mails.signedIn('manager'), await mails.signedIn('storeman')];
  const store = { name: 'Yard', address: '1 Quay', scheme: 'gb', timeZone: zoneOfNoon() };
  const { body } = await manager.post('/api/stores').send(store).expect(201);
  const storeId: number = body.id;
  await storeman.post('/api/items').send(lifter(storeId)).expect(201);
  await mails.app.get(UnitOfWork).run(async (change) => {
    const rule = { workDays: [1, 2, 3, 4, 5, 6, 7], holidays: [], leadDays: [7], digestTime: '06:00' };
    await change.insert(ReminderRuleEntity, { storeId, ...rule, version: 1 });
    for (const address of everyone()) {
      const [name] = address.split('@');
      const person = change.create(PersonEntity, {
        name: name ?? '',
        signInName: address,
        passwordHash: 'nobody signs in with this',
        roles: ['storeman'],
        active: true,
        createdAt: '2026-01-01T00:00:00.000Z',
        version: 1,
      });
      await change.insert(PersonEntity, person);
      const choice = {
        personId: person.id,
        address,
        digest: 'daily',
        urgent: false,
        storeIds: null,
        version: 1,
      } as const;
      await change.insert(MailChoiceEntity, choice);
    }
  });
  await mails.close();
}

/** So that no day ends while the test runs. */
function zoneOfNoon(): string {
  const ahead = 12 - new Date().getUTCHours();
  return `Etc/GMT${ahead <= 0 ? '+' : '-'}${Math.abs(ahead)}`; // their signs are the other way round
}

async function keptMails(settings: Settings): Promise<MailEntity[]> {
  const mails = await startMailApp(settings);
  const rows = await mails.app.get(Reads).manager.find(MailEntity);
  await mails.close();
  return rows;
}
