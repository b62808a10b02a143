import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { ENGINES, freshDatabase } from '../support/engines.js';
import { DECIDED_AT, loopbackLine, startMailApp, type MailApp } from '../support/mail-app.js';
import { catchMail, type SmtpCatcher } from '../support/smtp-catcher.js';

const HOUR = 60;
const THREE_DAYS = 72 * HOUR;

describe.each(ENGINES)('sending mail on %s', (engine) => {
  let mails: MailApp;
  let remove: () => Promise<void>;
  const opened: { close(): unknown }[] = [];

  beforeAll(async () => {
    const database = await freshDatabase(engine);
    remove = database.remove;
    mails = await startMailApp(database.settings);
  });
  afterAll(async () => {
    await mails.close();
    await remove();
  });
  afterEach(async () => {
    for (const one of opened.splice(0).reverse()) await one.close();
  });

  const server = async (behaviour?: Parameters<typeof catchMail>[0]): Promise<SmtpCatcher> => {
    const catcher = await catchMail(behaviour);
    opened.push(catcher);
    return catcher;
  };
  const lineTo = (...given: Parameters<typeof loopbackLine>) => {
    const line = loopbackLine(...given);
    opened.push(line);
    return line;
  };

  it('hands over what was decided, as text and HTML, in words of any alphabet', async () => {
    const { port, mails: caught } = await server();
    const id = await mails.post({
      toName: 'Łucja "Lu" Åström, Zoë',
      toAddress: 'lucja@yard.example',
      subject: 'Prüfung fällig: 3 Schäkel, 吊具 «SL-014» — bitte prüfen, damit am Montag alles bereitsteht',
      plainText: 'Prüfe SL-014 – heute.\n.\nhttps://gear.example/register/14\n',
      html: '<p>Prüfe <b>SL-014</b> – heute.</p>',
    });
    expect(await mails.send(lineTo({ port }))).toBe(1);
    const kept = await mails.mail(id);
    expect(kept).toMatchObject({
      state: 'sent',
      tries: 1,
      fault: null,
      claimedBy: null,
      settledAt: DECIDED_AT,
    });
    expect(caught).toHaveLength(1);
    const { parsed, from, to } = caught[0] ?? expect.unreachable();
    expect([from, to]).toEqual(['gear@yard.example', ['lucja@yard.example']]);
    expect(parsed.subject).toBe(kept.subject);
    expect(parsed.to).toMatchObject({
      value: [{ name: 'Łucja "Lu" Åström, Zoë', address: 'lucja@yard.example' }],
    });
    expect(parsed.text?.trim()).toBe(kept.plainText.trim());
    expect(parsed.html).toBe(kept.html);
    expect(parsed.messageId).toBe(kept.messageId);
    expect(parsed.date?.toISOString()).toBe(DECIDED_AT);
    // RFC 3834, 5 and RFC 2369, 3.2: no holiday replies, and a way to fewer mails.
    expect(parsed.headers.get('auto-submitted')).toBe('auto-generated');
    expect(parsed.headers.get('list')).toMatchObject({
      unsubscribe: { url: 'https://gear.example/me/mail' },
    });
    expect(parsed.headers.get('content-type')).toMatchObject({ value: 'multipart/alternative' });
  });

  it.each([
    ['TLS from the first byte', 'implicit', true],
    ['STARTTLS', 'required', false],
  ] as const)('signs in over %s', async (_name, tls, secure) => {
    const account = { user: 'gear', password: 'a pass phrase' };
    const { port, mails: caught } = await server({ secure, account });
    await mails.post();
    expect(await mails.send(lineTo({ port, tls, ...account }))).toBe(1);
    expect(caught).toMatchObject([{ secure: true }]);
  });

  it('hands nothing over a line whose certificate nobody vouches for, or that has no TLS', async () => {
    const id = await mails.post();
    const unknown = await server({ secure: true });
    const untrusting = { authority: undefined };
    const line = lineTo({ port: unknown.port, tls: 'implicit' }, untrusting);
    expect(await mails.send(line)).toBe(0);
    expect(await mails.mail(id)).toMatchObject({ state: 'waiting', fault: 'notPrivate', tries: 1 });
    const starting = await server();
    expect(await mails.send(lineTo({ port: starting.port, tls: 'required' }, untrusting), 1)).toBe(0);
    expect(await mails.mail(id)).toMatchObject({ state: 'waiting', fault: 'notPrivate', tries: 2 });
    expect([...unknown.mails, ...starting.mails]).toEqual([]);
    const good = await server();
    expect(await mails.send(lineTo({ port: good.port }), 10)).toBe(1);
  });

  it('tries a refused sign-in again every few minutes for three days, keeps the password to itself, then gives up', async () => {
    const { port, mails: caught } = await server({ account: { user: 'gear', password: 'right' } });
    const id = await mails.post();
    const line = lineTo({ port, tls: 'required', user: 'gear', password: 'wrong-secret' });
    for (const minutes of [0, 1, 6, 11, THREE_DAYS - 1]) expect(await mails.send(line, minutes)).toBe(0);
    const waiting = await mails.mail(id);
    expect(waiting).toMatchObject({ state: 'waiting', fault: 'signInRefused', tries: 5 });
    expect(waiting.lastAnswer).not.toContain('wrong-secret');
    expect(Date.parse(waiting.nextTryAt) - Date.parse(DECIDED_AT)).toBe(THREE_DAYS * 60_000);
    await mails.send(line, THREE_DAYS);
    expect(await mails.mail(id)).toMatchObject({ state: 'dead', tries: 6 });
    expect(caught).toEqual([]);
  });

  it('sends two of three mails whose third addressee is refused, and gives that one up at once', async () => {
    const refuse = (address: string) => (address === 'gone@yard.example' ? 550 : undefined);
    const { port, mails: caught } = await server({ refuse });
    const ids = [];
    for (const who of ['ines', 'gone', 'piet'])
      ids.push(await mails.post({ toAddress: `${who}@yard.example` }));
    expect(await mails.send(lineTo({ port }))).toBe(2);
    expect(caught.flatMap(({ to }) => to).sort()).toEqual(['ines@yard.example', 'piet@yard.example']);
    const states = await Promise.all(ids.map(async (id) => (await mails.mail(id)).state));
    expect(states).toEqual(['sent', 'dead', 'sent']);
    const dead = await mails.mail(ids[1] ?? 0);
    expect(dead).toMatchObject({ fault: 'addressRefused', tries: 1 });
    expect(dead.lastAnswer).toContain('550');
  });

  it('gives up mail that the server refuses after reading it, but not for a sender that it refuses', async () => {
    const strict = await server({ afterData: () => 554 });
    const spam = await mails.post();
    await mails.send(lineTo({ port: strict.port }));
    expect(await mails.mail(spam)).toMatchObject({ state: 'dead', fault: 'mailRefused' });
    const misset = await server({ refuseSender: 550 });
    const sound = await mails.post();
    await mails.send(lineTo({ port: misset.port }));
    expect(await mails.mail(sound)).toMatchObject({ state: 'waiting', fault: 'senderRefused' });
    const { port } = await server();
    expect(await mails.send(lineTo({ port }), 5)).toBe(1);
  });

  // Greylisting (RFC 6647): refused for now, taken when it comes again.
  it('tries again after 1, 5, 15 and 60 minutes and every four hours, until a server that put it off takes it', async () => {
    let open = false;
    const { port, mails: caught } = await server({ refuse: () => (open ? undefined : 451) });
    const line = lineTo({ port });
    const id = await mails.post();
    const waits: number[] = [];
    for (let minutes = 0; waits.length < 6;) {
      await mails.send(line, minutes);
      const { nextTryAt } = await mails.mail(id);
      const next = (Date.parse(nextTryAt) - Date.parse(DECIDED_AT)) / 60_000;
      waits.push(next - minutes);
      expect(await mails.send(line, next - 0.1)).toBe(0);
      minutes = next;
    }
    expect(waits).toEqual([1, 5, 15, 60, 240, 240]);
    expect(await mails.mail(id)).toMatchObject({ state: 'waiting', fault: 'notYet', tries: 6 });
    open = true;
    expect(await mails.send(line, THREE_DAYS - 1)).toBe(1);
    expect(caught).toHaveLength(1);
  });

  it('sends again, under the same Message-ID, what the server may have taken before the line broke', async () => {
    let drops = 1;
    const { port, mails: caught } = await server({ afterData: () => ((drops -= 1) >= 0 ? 'drop' : 'take') });
    const line = lineTo({ port });
    const id = await mails.post();
    expect(await mails.send(line)).toBe(0);
    expect(await mails.mail(id)).toMatchObject({ state: 'waiting', fault: 'lineLost' });
    expect(await mails.send(line, 1)).toBe(1);
    const { messageId } = await mails.mail(id);
    expect(caught.map(({ parsed }) => parsed.messageId)).toEqual([messageId, messageId]);
    expect(caught.map(({ parsed }) => parsed.date?.toISOString())).toEqual([DECIDED_AT, DECIDED_AT]);
  });

  it.each([
    ['says nothing any more', { silenceMs: 150 }],
    ['takes longer than a mail may', { wholeMs: 300 }],
  ])('hangs up on a server that %s', async (_name, limits) => {
    let hangs = true;
    const { port, mails: caught } = await server({ afterData: () => (hangs ? 'hang' : 'take') });
    const id = await mails.post();
    expect(await mails.send(lineTo({ port }, limits))).toBe(0);
    expect(await mails.mail(id)).toMatchObject({
      state: 'waiting',
      fault: 'lineLost',
      tries: 1,
      claimedBy: null,
    });
    hangs = false;
    expect(await mails.send(lineTo({ port }), 1)).toBe(1);
    expect(caught).toHaveLength(2);
  });

  it('leaves a server that is down alone, and sends everything once it is back', async () => {
    const gone = await catchMail();
    await gone.close();
    const ids = [await mails.post(), await mails.post(), await mails.post(), await mails.post()];
    const line = lineTo({ port: gone.port });
    expect(await mails.send(line)).toBe(0);
    const tried = await Promise.all(ids.map(async (id) => (await mails.mail(id)).tries));
    expect(tried.reduce((sum, tries) => sum + tries)).toBeLessThanOrEqual(2); // one in each lane
    const first = await mails.mail(ids[0] ?? 0);
    expect(first).toMatchObject({ state: 'waiting', fault: 'noAnswer' });
    const { mails: caught } = await server({ port: gone.port });
    expect(await mails.send(line, 2)).toBe(4);
    expect(caught).toHaveLength(4);
  });

  it('sends mail that lay too long while this server was off once, and gives it up only if that fails', async () => {
    const { port, mails: caught } = await server();
    await mails.post();
    expect(await mails.send(lineTo({ port }), THREE_DAYS + 9 * HOUR)).toBe(1);
    expect(caught).toHaveLength(1);
    const dead = await catchMail();
    await dead.close();
    const late = await mails.post();
    await mails.send(lineTo({ port: dead.port }), THREE_DAYS + 9 * HOUR);
    expect(await mails.mail(late)).toMatchObject({ state: 'dead', fault: 'noAnswer' });
  });

  it('sends urgent mail before digests', async () => {
    const { port, mails: caught } = await server();
    for (const subject of ['one', 'two', 'three']) await mails.post({ subject });
    await mails.post({ kind: 'urgent', subject: 'danger' });
    await mails.send(lineTo({ port }));
    const places = caught.map(({ parsed }) => parsed.subject);
    expect(places.indexOf('danger')).toBeLessThan(2); // two lanes
    expect(places).toHaveLength(4);
  });

  // RFC 5322, 2.2: a header ends with its line, so whoever writes a line break writes headers.
  it.each([
    ['subject', { subject: 'Hello\r\nBcc: evil@else.example\r\n\r\nbody' }],
    ['name', { toName: 'Ines\r\nBcc: evil@else.example' }],
    ['name with an address', { toName: '"Ines" <evil@else.example>, Piet' }],
    ['separator of lines', { subject: 'Hello\u2028Bcc: evil@else.example' }],
  ])('lets no %s add a header or an addressee', async (_name, differences) => {
    const { port, mails: caught } = await server();
    await mails.post(differences);
    expect(await mails.send(lineTo({ port }))).toBe(1);
    const { parsed, to } = caught[0] ?? expect.unreachable();
    expect(to).toEqual(['ines@yard.example']);
    expect(parsed.bcc).toBeUndefined();
    expect(parsed.to).toMatchObject({ value: [{ address: 'ines@yard.example' }] });
    expect(parsed.text?.trim()).toBe('Examine SL-014.');
  });

  it.each([
    'b@y.example\r\nRCPT TO:<evil@else.example>',
    'b@y.example, evil@else.example',
    'Ines <evil@else.example>',
    'no address',
  ])('gives up mail to %j without asking the server', async (toAddress) => {
    const { port, mails: caught, connections } = await server();
    const id = await mails.post({ toAddress });
    await mails.send(lineTo({ port }));
    expect(await mails.mail(id)).toMatchObject({ state: 'dead', fault: 'addressRefused' });
    expect(caught).toEqual([]);
    expect(connections()).toBe(0);
  });
});
