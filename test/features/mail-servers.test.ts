import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { freshDatabase } from '../support/engines.js';
import { loopbackLine, startMailApp, type MailApp } from '../support/mail-app.js';
import { catchMail, type SmtpCatcher } from '../support/smtp-catcher.js';

const MAILS = 200;

describe('two servers on one PostgreSQL that send at once', () => {
  let apps: MailApp[];
  let remove: () => Promise<void>;
  let catcher: SmtpCatcher;
  beforeAll(async () => {
    const database = await freshDatabase('postgres');
    remove = database.remove;
    catcher = await catchMail();
    apps = [await startMailApp(database.settings), await startMailApp(database.settings)];
  });
  afterAll(async () => {
    for (const app of apps) await app.close();
    await catcher.close();
    await remove();
  });

  it('send each mail exactly once, and both take part', async () => {
    const ids: number[] = [];
    for (let mail = 0; mail < MAILS; mail += 1) ids.push((await apps[0]?.post()) ?? 0);
    const lines = apps.map(() => loopbackLine({ port: catcher.port }));
    const sent = await Promise.all(apps.map((app, index) => app.send(lines[index] ?? expect.unreachable())));
    for (const line of lines) line.close();
    expect(sent.reduce((sum, mails) => sum + mails)).toBe(MAILS);
    expect(Math.min(...sent)).toBeGreaterThan(0);
    const messageIds = catcher.mails.map(({ parsed }) => parsed.messageId);
    const decided = await Promise.all(ids.map(async (id) => (await apps[1]?.mail(id))?.messageId));
    expect(messageIds.toSorted()).toEqual(decided.toSorted());
  });
});
