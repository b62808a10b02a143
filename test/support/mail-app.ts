import 'reflect-metadata';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import request from 'supertest';
import type TestAgent from 'supertest/lib/agent.js';
import { Clock } from '../../src/clock.js';
import type { MailSettings } from '../../src/mail-settings.js';
import { SYSTEM_ACTOR } from '../../src/people/actor.js';
import { PeopleService } from '../../src/people/people.service.js';
import type { Role } from '../../src/people/role.js';
import type { MailLine } from '../../src/reminders/outbox/mail-line.js';
import { MailQueue } from '../../src/reminders/outbox/mail-queue.service.js';
import { MailSender } from '../../src/reminders/outbox/mail-sender.service.js';
import { MailEntity } from '../../src/reminders/outbox/mail.entity.js';
import { Outbox, type NewMail } from '../../src/reminders/outbox/post-mail.js';
import { SmtpLine, type SmtpLimits } from '../../src/reminders/outbox/smtp-line.js';
import type { Settings } from '../../src/settings.js';
import { Reads } from '../../src/storage/reads.js';
import { UnitOfWork } from '../../src/storage/unit-of-work.js';
import { createApp } from '../../src/web/create-app.js';
import { LOOPBACK } from './smtp-certificate.js';

/** The instant at which the mails of these tests are decided on. */
export const DECIDED_AT = '2026-11-26T06:00:00.000Z';

const PASSWORD = 'test password of some length';

/** A server whose mail can be looked at. */
export interface MailApp {
  readonly app: NestFastifyApplication;
  /** Someone to write to. */
  readonly personId: number;
  /** A client that is signed in as someone with these roles. */
  signedIn(...roles: Role[]): Promise<TestAgent>;
  /** Puts a mail in the outbox, with these differences, and gives its number. */
  post(differences?: Partial<NewMail>): Promise<number>;
  mail(id: number): Promise<MailEntity>;
  /** Sends what is due so many minutes after the decision, over this line. */
  send(line: MailLine, minutes?: number): Promise<number>;
  close(): Promise<void>;
}

let keys = 0;

/** Starts it on a database. */
export async function startMailApp(settings: Settings): Promise<MailApp> {
  const app = await createApp(settings, { quiet: true });
  await app.init();
  await app.getHttpAdapter().getInstance().ready();
  const people = app.get(PeopleService);
  const newPerson = async (roles: Role[]) => {
    keys += 1;
    const signInName = `mail.person${keys}`;
    const { id } = await people.create(SYSTEM_ACTOR, { name: 'Ines', signInName, password: PASSWORD, roles });
    return { id, signInName };
  };
  const { id: personId } = await newPerson(['storeman']);
  return {
    app,
    personId,
    async signedIn(...roles) {
      const { signInName } = await newPerson(roles);
      const agent = request.agent(app.getHttpServer());
      await agent.post('/api/session').send({ signInName, password: PASSWORD }).expect(204);
      return agent;
    },
    post(differences = {}) {
      keys += 1;
      const mail = { ...EXAMPLE, personId, subjectKey: `digest:${keys}`, ...differences };
      return app.get(UnitOfWork).run((manager) => app.get(Outbox, LOOSE).post(manager, mail));
    },
    mail: (id) => app.get(Reads).manager.findOneByOrFail(MailEntity, { id }),
    send(line, minutes = 0) {
      const sender = new MailSender(app.get(MailQueue, LOOSE), app.get(Clock), line);
      return app.get(Clock).at(minutesAfter(minutes), () => sender.sendDue());
    },
    close: () => app.close(),
  };
}

/** A line to a server on loopback, with short limits that nobody has to wait for. */
export function loopbackLine(settings: Partial<MailSettings>, limits: Partial<SmtpLimits> = {}): SmtpLine {
  const mail = { host: 'localhost', port: 0, tls: 'none', from: 'gear@yard.example', ...settings } as const;
  return new SmtpLine(mail, 'https://gear.example', { ...SHORT, ...limits });
}

/** An instant so many minutes after that of the decision. */
export function minutesAfter(minutes: number): string {
  return new Date(Date.parse(DECIDED_AT) + minutes * 60_000).toISOString();
}

const LOOSE = { strict: false } as const;

const SHORT: SmtpLimits = {
  connectionMs: 5_000,
  greetingMs: 5_000,
  silenceMs: 5_000,
  wholeMs: 10_000,
  authority: LOOPBACK.cert,
};

const EXAMPLE: Omit<NewMail, 'personId' | 'subjectKey'> = {
  kind: 'digest',
  toName: 'Ines Okonjo',
  toAddress: 'ines@yard.example',
  subject: 'Two slings fall due',
  plainText: 'Examine SL-014.\n',
  html: '<p>Examine SL-014.</p>',
  at: DECIDED_AT,
};
