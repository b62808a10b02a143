import { Logger } from '@nestjs/common';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { MailEntity } from '../../src/reminders/outbox/mail.entity.js';
import { ReminderSchedule } from '../../src/reminders/schedule/reminder-schedule.service.js';
import { openStorage } from '../../src/storage/open-storage.js';
import { UnitOfWork } from '../../src/storage/unit-of-work.js';
import { SCHEMA } from '../../src/schema.js';
import { ENGINES, freshDatabase } from '../support/engines.js';
import { startMailApp } from '../support/mail-app.js';
import { startMailYard } from '../support/mail-yard.js';
import { catchMail } from '../support/smtp-catcher.js';

describe.each(ENGINES)('the schedule of reminders on %s', (engine) => {
  const left: (() => Promise<void>)[] = [];
  afterEach(async () => {
    for (const leave of left.splice(0).reverse()) await leave();
    vi.restoreAllMocks();
  });

  it('logs a step that fails, and does the others', async () => {
    const { settings, remove } = await freshDatabase(engine);
    const mails = await startMailApp({ ...settings, demo: true });
    left.push(remove, () => mails.close());
    const logged = vi.spyOn(Logger.prototype, 'error').mockImplementation(() => undefined);
    const id = await mails.post();
    await mails.app
      .get(UnitOfWork)
      .run((manager) => manager.query('ALTER TABLE due_scheme RENAME TO elsewhere'));
    await mails.app.get(ReminderSchedule, { strict: false }).tick();
    expect(logged.mock.calls.flat().join()).toContain('bringing the due days up to date');
    expect(await mails.mail(id)).toMatchObject({ state: 'sent' });
  });

  it('begins at once, and when the server is shut down it lets the mail on its way arrive', async () => {
    let letIn: () => void = () => undefined;
    const atTheDoor = new Promise<void>((resolve) => (letIn = resolve));
    const catcher = await catchMail({ afterData: () => atTheDoor.then(() => 'take' as const) });
    const { settings, remove } = await freshDatabase(engine);
    left.push(catcher.close, remove);
    const mail = { host: 'localhost', port: catcher.port, tls: 'none', from: 'gear@yard.example' } as const;
    const mails = await startMailApp({ ...settings, mail });
    const ids = [await mails.post(), await mails.post(), await mails.post()];
    mails.app.get(ReminderSchedule, { strict: false }).start();
    const inHand = async () =>
      (await Promise.all(ids.map((id) => mails.mail(id)))).filter(({ claimedBy }) => claimedBy !== null)
        .length;
    await expect.poll(inHand).toBe(2);
    const closed = mails.close();
    letIn();
    await closed;
    expect(catcher.mails).toHaveLength(2);
    const storage = await openStorage(settings, SCHEMA);
    const states = (await storage.reads.manager.find(MailEntity)).map(({ state }) => state);
    await storage.close();
    expect(states.sort()).toEqual(['sent', 'sent', 'waiting']);
  });

  it('finds a danger while the mail server takes its time over other mail', async () => {
    let letIn: () => void = () => undefined;
    const atTheDoor = new Promise<void>((resolve) => (letIn = resolve));
    const catcher = await catchMail({ afterData: () => atTheDoor.then(() => 'take' as const) });
    const mail = { host: 'localhost', port: catcher.port, tls: 'none', from: 'gear@yard.example' } as const;
    const yard = await startMailYard(engine, { mail });
    left.push(catcher.close, () => yard.close());
    await yard.choose('storeman', { digest: 'none', urgent: true });
    const danger = async (description: string) => {
      const { id } = await yard.newItem();
      const defect = { description, severity: 'immediateDanger' };
      await yard.crew.post(`/api/items/${id}/defects`).send(defect).expect(201);
    };
    const states = async () => (await yard.mails('storeman')).map(({ claimedBy }) => claimedBy !== null);
    await danger('a cut');
    yard.app.get(ReminderSchedule, { strict: false }).start();
    await expect.poll(states).toEqual([true]);
    await danger('a crack');
    await expect.poll(async () => (await states()).length, { timeout: 12_000 }).toBe(2);
    expect(catcher.mails).toEqual([]);
    letIn();
    await expect.poll(() => catcher.mails.length, { timeout: 12_000 }).toBe(2);
  }, 40_000);
});
