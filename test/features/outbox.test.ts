import type TestAgent from 'supertest/lib/agent.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Clock } from '../../src/clock.js';
import { Ledger } from '../../src/ledger/ledger.service.js';
import { LocalMailbox, type MailLine } from '../../src/reminders/outbox/mail-line.js';
import type { MailFault } from '../../src/reminders/outbox/mail.entity.js';
import { OldMail } from '../../src/reminders/outbox/old-mail.service.js';
import { Outbox, type NewMail } from '../../src/reminders/outbox/post-mail.js';
import { MailWarnings } from '../../src/reminders/preferences/mail-warnings.service.js';
import { UnitOfWork } from '../../src/storage/unit-of-work.js';
import { ENGINES, freshDatabase } from '../support/engines.js';
import { DECIDED_AT, minutesAfter, startMailApp, type MailApp } from '../support/mail-app.js';

const MAIL = { host: 'localhost', port: 2525, tls: 'none', from: 'gear@yard.example' } as const;

/** A line on which every try ends so. */
function failing(fault: MailFault, answer: string): MailLine {
  return { send: async () => ({ fault, answer }), close: () => undefined };
}

describe.each(ENGINES)('the outbox on %s', (engine) => {
  let mails: MailApp;
  let remove: () => Promise<void>;
  let manager: TestAgent;
  let storeman: TestAgent;
  let crew: TestAgent;

  beforeAll(async () => {
    const database = await freshDatabase(engine);
    remove = database.remove;
    mails = await startMailApp({ ...database.settings, mail: MAIL });
    [manager, storeman, crew] = [
      await mails.signedIn('manager'),
      await mails.signedIn('storeman'),
      await mails.signedIn('crew'),
    ];
  });
  afterAll(async () => {
    await mails.close();
    await remove();
  });

  const givenUp = async (subject: string): Promise<number> => {
    const id = await mails.post({ subject });
    await mails.send(failing('addressRefused', '550 5.1.1 <ines@yard.example> unknown'));
    expect(await mails.mail(id)).toMatchObject({ state: 'dead', settledAt: DECIDED_AT });
    return id;
  };

  it('gives each mail a Message-ID of its own in the domain that mail comes from (RFC 5322, 3.6.4)', async () => {
    const ids = [await mails.mail(await mails.post()), await mails.mail(await mails.post())];
    const messageIds = ids.map(({ messageId }) => messageId);
    for (const messageId of messageIds) expect(messageId).toMatch(/^<[\da-f-]{36}@yard\.example>$/);
    expect(new Set(messageIds).size).toBe(2);
    await mails.send(new LocalMailbox());
  });

  it('takes a mail with the transaction that decides on it, or not at all', async () => {
    const outbox = mails.app.get(Outbox, { strict: false });
    const before = (await manager.get('/api/outbox').expect(200)).body.waiting.total;
    const { personId } = mails;
    const mail: NewMail = {
      ...{
        kind: 'digest' as const,
        subjectKey: 'undone',
        personId,
        toName: 'Ines',
        toAddress: 'ines@yard.example',
      },
      ...{ subject: 'Undone', plainText: 'Undone', html: '<p>Undone</p>', at: DECIDED_AT },
    };
    const undone = mails.app.get(UnitOfWork).run(async (change) => {
      await outbox.post(change, mail);
      throw new Error('undone');
    });
    await expect(undone).rejects.toThrow('undone');
    expect((await manager.get('/api/outbox').expect(200)).body.waiting.total).toBe(before);
  });

  it('takes the same mail once only', async () => {
    await mails.post({ subjectKey: 'digest:once' });
    await expect(mails.post({ subjectKey: 'digest:once' })).rejects.toThrow();
    await mails.send(new LocalMailbox());
  });

  it('withdraws what waits for a person when newer mail says it again, but not what is on its way', async () => {
    const outbox = mails.app.get(Outbox, { strict: false });
    const old = await mails.post();
    const urgent = await mails.post({ kind: 'urgent' });
    let replaced: number[] = [];
    let goOn = () => {};
    const withdrawn = new Promise<void>((resolve) => (goOn = resolve));
    const onItsWay = await mails.post({ kind: 'urgent', subject: 'on its way' });
    const withdraw = () =>
      mails.app.get(UnitOfWork).run(async (change) => {
        const { personId } = mails;
        replaced = [
          ...(await outbox.replaceUnsent(change, { personId, kind: 'urgent', at: minutesAfter(1) })),
          ...(await outbox.replaceUnsent(change, { personId, kind: 'digest', at: minutesAfter(1) })),
        ];
      });
    const slow: MailLine = {
      async send({ subject }) {
        // The other lane is held up meanwhile: it could take what is to be withdrawn in hand.
        if (subject === 'on its way') await withdraw().finally(goOn);
        else await withdrawn;
        return { fault: null, answer: '250 ok' };
      },
      close: () => undefined,
    };
    await mails.send(slow);
    expect(replaced).not.toContain(onItsWay);
    expect(await mails.mail(onItsWay)).toMatchObject({ state: 'sent' });
    for (const id of replaced)
      expect(await mails.mail(id)).toMatchObject({ state: 'replaced', settledAt: minutesAfter(1) });
    expect([old, urgent]).toEqual(expect.arrayContaining(replaced));
    expect(replaced).toContain(old);
  });

  it('shows what was given up first, with the answer of the server and what to do', async () => {
    const id = await givenUp('Three straps fall due');
    const { body } = await storeman.get('/api/outbox').expect(200);
    expect(body.dead.mails[0]).toMatchObject({ id, state: 'dead', fault: 'addressRefused', tries: 1 });
    const { text } = await storeman.get('/outbox').expect(200);
    expect(text).toContain('Three straps fall due');
    expect(text).toContain('550 5.1.1 &lt;ines@yard.example> unknown');
    expect(text).toContain('Ask its owner for the right address');
    expect(text).not.toContain('Send again');
    expect((await manager.get('/outbox').expect(200)).text).toContain('Send again');
    await crew.get('/outbox').expect(403);
    await crew.get(`/outbox/${id}`).expect(403);
    await crew.get(`/outbox/${id}/html`).expect(403);
    await crew.get('/api/outbox').expect(403);
  });

  it('warns for a week of what was given up, until it is sent again', async () => {
    const warned = async (days: number) => {
      const at = minutesAfter(days * 24 * 60);
      const warnings = await mails.app
        .get(Clock)
        .at(at, () => mails.app.get(MailWarnings, { strict: false }).list());
      return warnings.flatMap((warning) => (warning.code === 'givenUp' ? [warning.mails] : []))[0] ?? 0;
    };
    const before = await warned(1);
    const id = await givenUp('Three straps fall due');
    expect([await warned(1), await warned(6), await warned(9)]).toEqual([before + 1, before + 1, 0]);
    await manager.post(`/api/outbox/${id}/resend`).expect(204);
    expect(await warned(1)).toBe(before);
    await mails.send(new LocalMailbox(), 1e9);
  });

  it('sends again what was given up, as the same mail, when a manager says so, and writes that down', async () => {
    const id = await givenUp('Two slings fall due');
    const before = await mails.mail(id);
    await storeman.post(`/api/outbox/${id}/resend`).expect(403);
    await manager.post(`/api/outbox/${id}/resend`).expect(204);
    await manager.post(`/api/outbox/${id}/resend`).expect(409);
    await manager.post('/api/outbox/999999/resend').expect(404);
    const { messageId, decidedAt } = before;
    const waiting = await mails.mail(id);
    expect(waiting).toMatchObject({ state: 'waiting', tries: 0, settledAt: null, messageId, decidedAt });
    const [entry] = await mails.app.get(Ledger).newest(1);
    expect(entry).toMatchObject({
      action: 'mail.resent',
      subjectKind: 'person',
      detail: { mailId: id, messageId },
    });
    // It is tried anew for three days from now on, however long ago it was decided on.
    const age = Date.parse(waiting.nextTryAt) - Date.parse(DECIDED_AT);
    await mails.send(failing('notYet', '451 later'), age / 60_000);
    expect(await mails.mail(id)).toMatchObject({ state: 'waiting', tries: 1 });
    await mails.send(new LocalMailbox(), age / 60_000 + 2);
    expect(await mails.mail(id)).toMatchObject({ state: 'sent', messageId });
    const form = await givenUp('One shackle falls due');
    const sent = await manager.post(`/outbox/${form}/resend`).type('form').send({}).expect(303);
    expect(sent.headers['location']).toBe('/outbox');
    await mails.send(new LocalMailbox(), 1e9);
  });

  it('shows a mail as text and, in a frame that can do nothing, as HTML', async () => {
    const html = '<style>p{color:red}</style><p>Hello</p><script>alert(1)</script>';
    const plainText = 'See http://127.0.0.1:0/register/7 and https://else.example/register/7 <b>';
    const id = await mails.post({ html, plainText });
    const { text } = await storeman.get(`/outbox/${id}`).expect(200);
    expect(text).toContain('href="/register/7"');
    expect(text).not.toContain('href="https://else.example');
    expect(text).toContain('&lt;b>');
    expect(text).toContain(`<iframe class="mail-frame" src="/outbox/${id}/html" sandbox`);
    expect(text).not.toContain('alert(1)');
    const framed = await storeman.get(`/outbox/${id}/html`).expect(200);
    expect(framed.text).toBe(html);
    const policy = String(framed.headers['content-security-policy']);
    for (const rule of ["default-src 'none'", "frame-ancestors 'self'", 'sandbox'])
      expect(policy).toContain(rule);
    expect(policy).not.toMatch(/script-src|allow-/);
    await mails.send(new LocalMailbox());
  });

  it('takes the texts out of what was sent 90 days ago, and of nothing else', async () => {
    const sent = await mails.post();
    await mails.send(new LocalMailbox());
    const dead = await givenUp('One sling falls due');
    const waiting = await mails.post();
    const emptyAt = (days: number) => {
      const oldMail = new OldMail(mails.app.get(UnitOfWork), mails.app.get(Clock));
      return mails.app.get(Clock).at(minutesAfter(days * 24 * 60), () => oldMail.empty());
    };
    await emptyAt(90);
    expect(await mails.mail(sent)).toMatchObject({ plainText: 'Examine SL-014.\n' });
    await emptyAt(91);
    const emptied = await mails.mail(sent);
    expect(emptied).toMatchObject({ plainText: '', html: '', state: 'sent', subject: 'Two slings fall due' });
    for (const id of [dead, waiting])
      expect(await mails.mail(id)).toMatchObject({ plainText: 'Examine SL-014.\n' });
    expect((await storeman.get(`/outbox/${sent}`).expect(200)).text).toContain('kept for 90 days');
    await mails.send(new LocalMailbox(), 1e9);
  });

  it('has no local mailbox outside of the demo', async () => {
    const { status } = await manager.get('/mailbox');
    expect(status).toBe(404);
    for (const path of ['', '/html']) {
      const answer = await manager.get(`/mailbox/1${path}`);
      expect(answer.status, path).toBe(404);
    }
  });

  it('leaves what another server has in hand until its claim has run out', async () => {
    const id = await mails.post();
    const stuck: MailLine = { send: () => new Promise(() => undefined), close: () => undefined };
    void mails.send(stuck);
    await expect.poll(async () => (await mails.mail(id)).claimedBy).not.toBeNull();
    await mails.app
      .get(UnitOfWork)
      .run((change) => change.query(`UPDATE mail SET claimed_by = 'another server' WHERE id = $1`, [id]));
    // On the embedded database there is no other server: what is in hand at a start was in the hand of a killed one.
    expect(await mails.send(new LocalMailbox(), 2)).toBe(engine === 'sqlite' ? 1 : 0);
    expect(await mails.send(new LocalMailbox(), 4)).toBe(engine === 'sqlite' ? 0 : 1);
    expect(await mails.mail(id)).toMatchObject({ state: 'sent', tries: 1 });
  });
});

describe('the outbox without a mail server', () => {
  let mails: MailApp;
  let remove: () => Promise<void>;
  beforeAll(async () => {
    const database = await freshDatabase('sqlite');
    remove = database.remove;
    mails = await startMailApp(database.settings);
  });
  afterAll(async () => {
    await mails.close();
    await remove();
  });

  it('is closed, and says how to set one', async () => {
    expect(mails.app.get(Outbox, { strict: false }).open).toBe(false);
    const { text } = await (await mails.signedIn('manager')).get('/outbox').expect(200);
    for (const name of ['SMTP_HOST', 'SMTP_USER', 'SMTP_PASSWORD', 'MAIL_FROM']) expect(text).toContain(name);
  });
});

describe('the local mailbox of the demo', () => {
  let mails: MailApp;
  let remove: () => Promise<void>;
  beforeAll(async () => {
    const database = await freshDatabase('sqlite');
    remove = database.remove;
    mails = await startMailApp({ ...database.settings, demo: true });
  });
  afterAll(async () => {
    await mails.close();
    await remove();
  });

  it('holds what would have been sent: of everyone for a manager, of oneself for anyone else', async () => {
    const [manager, crew] = [await mails.signedIn('manager'), await mails.signedIn('crew')];
    const id = await mails.post({ subject: 'Two slings fall due' });
    expect((await manager.get('/mailbox').expect(200)).text).toContain('No mail has arrived');
    expect(await mails.send(new LocalMailbox())).toBe(1);
    expect(await mails.mail(id)).toMatchObject({ state: 'sent', lastAnswer: 'local mailbox' });
    const { text } = await manager.get('/mailbox').expect(200);
    expect(text).toContain('Two slings fall due');
    expect(text).toContain('nothing leaves this machine');
    expect((await manager.get(`/mailbox/${id}`).expect(200)).text).toContain('Examine SL-014.');
    await manager.get(`/mailbox/${id}/html`).expect(200);
    expect((await crew.get('/mailbox').expect(200)).text).not.toContain('Two slings');
    await crew.get(`/mailbox/${id}`).expect(404);
    await crew.get(`/mailbox/${id}/html`).expect(404);
  });
});
