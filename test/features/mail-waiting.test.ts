import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { Clock } from '../../src/clock.js';
import { SYSTEM_ACTOR } from '../../src/people/actor.js';
import { PeopleService } from '../../src/people/people.service.js';
import { LocalMailbox, type MailLine, type OutgoingMail } from '../../src/reminders/outbox/mail-line.js';
import { MailQueue } from '../../src/reminders/outbox/mail-queue.service.js';
import { MailSender } from '../../src/reminders/outbox/mail-sender.service.js';
import { Outbox } from '../../src/reminders/outbox/post-mail.js';
import type { MailFault } from '../../src/reminders/outbox/mail.entity.js';
import { MailChoices } from '../../src/reminders/preferences/mail-choices.service.js';
import { UnitOfWork } from '../../src/storage/unit-of-work.js';
import { ENGINES, freshDatabase } from '../support/engines.js';
import { DECIDED_AT, minutesAfter, startMailApp, type MailApp } from '../support/mail-app.js';

const HOUR = 60;

/** A line on which every try ends so, and which remembers what it was given. */
function lineOf(fault: MailFault | null): MailLine & { readonly given: OutgoingMail[] } {
  const given: OutgoingMail[] = [];
  return {
    given,
    async send(mail) {
      given.push(mail);
      return { fault, answer: 'as the test wants it' };
    },
    close: () => undefined,
  };
}

describe.each(ENGINES)('mail that waits, on %s', (engine) => {
  let mails: MailApp;
  let remove: () => Promise<void>;
  beforeAll(async () => {
    const database = await freshDatabase(engine);
    remove = database.remove;
    mails = await startMailApp({ ...database.settings, demo: true });
    await mails.signedIn('manager');
  });
  afterEach(async () => void (await mails.send(new LocalMailbox(), 1e9)));
  afterAll(async () => {
    await mails.close();
    await remove();
  });

  const newPerson = async (signInName: string): Promise<number> => {
    const account = { name: 'Ines', signInName, password: 'test password of some length' };
    const people = mails.app.get(PeopleService);
    return (await people.create(SYSTEM_ACTOR, { ...account, roles: ['storeman'] })).id;
  };
  const choose = async (personId: number, address: string | null): Promise<void> => {
    const choices = mails.app.get(MailChoices, { strict: false });
    const { version } = await choices.of(SYSTEM_ACTOR, personId);
    await choices.change(SYSTEM_ACTOR, personId, { version, input: { address } });
  };

  it('goes to the address that its person has by then', async () => {
    const personId = await newPerson('moved');
    await choose(personId, 'old@yard.example');
    const id = await mails.post({ personId, toAddress: 'old@yard.example' });
    await mails.send(lineOf('notYet'));
    await choose(personId, 'new@yard.example');
    const line = lineOf(null);
    expect(await mails.send(line, 1)).toBe(1);
    expect(line.given).toMatchObject([{ toAddress: 'new@yard.example' }]);
    expect(await mails.mail(id)).toMatchObject({ state: 'sent', toAddress: 'new@yard.example' });
  });

  it.each([
    [
      'the account is closed',
      (id: number) => mails.app.get(PeopleService).change(SYSTEM_ACTOR, id, { active: false }),
    ],
    ['the address is taken away', (id: number) => choose(id, null)],
  ])('is given up when %s, and keeps no other back', async (why, leave) => {
    const personId = await newPerson(why.replaceAll(' ', '.'));
    await choose(personId, 'gone@yard.example');
    const id = await mails.post({ personId, kind: 'urgent', toAddress: 'gone@yard.example' });
    const other = await mails.post();
    await leave(personId);
    const line = lineOf(null);
    expect(await mails.send(line)).toBe(1);
    expect(line.given).toMatchObject([{ toAddress: 'ines@yard.example' }]);
    expect(await mails.mail(id)).toMatchObject({
      state: 'dead',
      fault: 'nobodyThere',
      settledAt: DECIDED_AT,
      claimedBy: null,
    });
    expect(await mails.mail(other)).toMatchObject({ state: 'sent' });
    const { text } = await (await mails.signedIn('manager')).get(`/outbox/${id}`).expect(200);
    expect(text).toContain('no account or no address any more');
  });

  it('and mail that was given up are withdrawn when newer mail says it again', async () => {
    const [dead, waiting] = [await mails.post(), await mails.post()];
    await mails.send({
      send: async ({ messageId }) => ({
        fault: messageId === (await mails.mail(dead)).messageId ? 'addressRefused' : 'notYet',
        answer: '',
      }),
      close: () => undefined,
    });
    expect([await mails.mail(dead), await mails.mail(waiting)]).toMatchObject([
      { state: 'dead' },
      { state: 'waiting' },
    ]);
    const urgent = await mails.post({ kind: 'urgent' });
    const { personId } = mails;
    const outbox = mails.app.get(Outbox, { strict: false });
    const withdrawn = await mails.app
      .get(UnitOfWork)
      .run((manager) => outbox.replaceUnsent(manager, { personId, kind: 'digest', at: minutesAfter(1) }));
    expect(withdrawn).toEqual([dead, waiting]);
    for (const id of withdrawn)
      expect(await mails.mail(id)).toMatchObject({ state: 'replaced', settledAt: minutesAfter(1) });
    expect(await mails.mail(urgent)).toMatchObject({ state: 'waiting' });
  });

  describe('when the clock was set back', () => {
    it('is tried for the first time at once, and again after the longest pause at most', async () => {
      const aYearAhead = minutesAfter(365 * 24 * HOUR);
      const id = await mails.post({ at: aYearAhead });
      expect(await mails.send(lineOf('notYet'))).toBe(0);
      expect(await mails.mail(id)).toMatchObject({ tries: 1, nextTryAt: minutesAfter(1) });
      await mails.send(lineOf('notYet'), 365 * 24 * HOUR);
      expect(await mails.mail(id)).toMatchObject({ tries: 2 });
      expect(await mails.send(new LocalMailbox(), 2)).toBe(1);
    });

    it('is not left in the hand of a server that took it before', async () => {
      const id = await mails.post();
      const stuck: MailLine = { send: () => new Promise(() => undefined), close: () => undefined };
      void mails.send(stuck, 24 * HOUR);
      await expect.poll(async () => (await mails.mail(id)).claimedBy).not.toBeNull();
      await mails.app
        .get(UnitOfWork)
        .run((manager) => manager.query(`UPDATE mail SET claimed_by = 'another' WHERE id = $1`, [id]));
      expect(await mails.send(new LocalMailbox())).toBe(1);
    });

    it('is tried again although the mail server is being left alone until then', async () => {
      const sender = (line: MailLine) =>
        new MailSender(mails.app.get(MailQueue, { strict: false }), mails.app.get(Clock), line);
      let fault: MailFault | null = 'noAnswer';
      const mended = sender({ send: async () => ({ fault, answer: '' }), close: () => undefined });
      const at = (minutes: number) => mails.app.get(Clock).at(minutesAfter(minutes), () => mended.sendDue());
      await mails.post();
      expect(await at(24 * HOUR)).toBe(0);
      fault = null;
      await mails.post();
      expect(await at(24 * HOUR + 0.9)).toBe(0);
      expect(await at(0)).toBe(2);
    });
  });

  it('is sent once the database works again that failed as the server started', async () => {
    // One that has freed nothing yet.
    const queue = mails.app.get(MailQueue, { strict: false });
    const sender = new MailSender(queue, mails.app.get(Clock), new LocalMailbox());
    const rename = (from: string, to: string) =>
      mails.app.get(UnitOfWork).run((manager) => manager.query(`ALTER TABLE ${from} RENAME TO ${to}`));
    const id = await mails.post();
    await rename('mail', 'elsewhere');
    await expect(sender.sendDue()).rejects.toThrow();
    await rename('elsewhere', 'mail');
    expect(await sender.sendDue()).toBe(1);
    expect(await mails.mail(id)).toMatchObject({ state: 'sent' });
  });

  it('is sent again, as the same mail, when what became of it could not be written down', async () => {
    const rename = (from: string, to: string) =>
      mails.app.get(UnitOfWork).run((manager) => manager.query(`ALTER TABLE ${from} RENAME TO ${to}`));
    const given: string[] = [];
    const line: MailLine = {
      async send({ messageId }) {
        given.push(messageId);
        if (given.length === 1) await rename('mail', 'elsewhere');
        return { fault: null, answer: '250 ok' };
      },
      close: () => undefined,
    };
    const queue = mails.app.get(MailQueue, { strict: false });
    const sender = new MailSender(queue, mails.app.get(Clock), line);
    const at = (minutes: number) => mails.app.get(Clock).at(minutesAfter(minutes), () => sender.sendDue());
    const id = await mails.post();
    await expect(at(0)).rejects.toThrow();
    await rename('elsewhere', 'mail');
    const { messageId } = await mails.mail(id);
    expect(await at(2.9)).toBe(0);
    expect(await at(3.1)).toBe(1);
    expect(given).toEqual([messageId, messageId]);
    expect(await mails.mail(id)).toMatchObject({ state: 'sent' });
  });
});
