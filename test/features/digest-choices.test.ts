import { Temporal } from 'temporal-polyfill';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addDays, toDay, type Day } from '../../src/rules/calendar/day.js';
import { shortDay } from '../../src/web/sentences/words.js';
import { ENGINES } from '../support/engines.js';
import { nextWeekday, startMailYard, type MailReader, type MailYard } from '../support/mail-yard.js';
import { promise } from '../support/promise.js';

const morning = (day: Day) => `${day}T07:30:00.000Z`;

describe.each(ENGINES)('who is told what falls due on %s', (engine) => {
  let yard: MailYard;
  let monday: Day;
  const onDay = (offset: number) => addDays(monday, offset);
  beforeAll(async () => {
    yard = await startMailYard(engine);
    monday = nextWeekday(yard.day(60), 1);
    await yard.remind(yard.storeId, { leadDays: [7] });
  });
  afterAll(() => yard.close());

  /** What came to someone on some days, each delivered before the next: the days, and the words on one line. */
  async function live(reader: MailReader, offsets: readonly number[]): Promise<Map<number, string>> {
    const told = new Map<number, string>();
    for (const offset of offsets) {
      const before = (await yard.mails(reader)).length;
      await yard.digests(morning(onDay(offset)));
      await yard.deliver(morning(onDay(offset)));
      const [mail] = (await yard.mails(reader)).slice(before);
      if (mail) told.set(offset, mail.plainText.replace(/\s+/g, ' '));
    }
    return told;
  }

  it('tells all managers of overdue gear that nobody chose to hear of, whatever they chose, and says why', async () => {
    const fresh = await startMailYard(engine);
    try {
      await fresh.choose('manager', { digest: 'none' });
      await fresh.choose('crew', {});
      await fresh.newItem({ tag: 'ALONE-1' });
      await fresh.digests(morning(monday));
      const [mail, ...more] = await fresh.mails('manager');
      expect(more).toEqual([]);
      expect(mail?.subject).toBe('ALONE-1 overdue in store');
      expect(mail?.toAddress).toBe('manager@yard.example');
      expect(mail?.plainText).toContain('It never had its thorough examination.');
      expect(mail?.plainText.replace(/\s+/g, ' ')).toContain(
        'Nobody has chosen to hear of overdue gear at Yard, so every manager with an address does.',
      );
      expect(await fresh.mails('crew')).toEqual([]);
    } finally {
      await fresh.close();
    }
  });

  it('once a week: on its first working day, of all that the week before left untold', async () => {
    await yard.choose('storeman', { digest: 'weekly', urgent: false });
    await yard.choose('manager', { digest: 'daily', urgent: false });
    // A Monday on which the store is closed: the week begins on Tuesday.
    await yard.remind(yard.storeId, { holidays: [onDay(7)] });
    await yard.dueOn('WEEK-1', onDay(2 + 7));
    await yard.dueOn('WEEK-2', onDay(4 + 7));
    const told = await live('storeman', [0, 1, 2, 3, 4, 5, 6, 7, 8, 9]);
    expect([...told.keys()]).toEqual([8]);
    expect(told.get(8)).toContain('WEEK-1');
    expect(told.get(8)).toContain('WEEK-2');
    const daily = (await yard.mails('manager')).map(({ plainText }) => plainText);
    expect(daily.filter((text) => text.includes('WEEK-2'))).not.toEqual([]);
  });

  it('once a week: the day after, when the server was off on its day', async () => {
    const told = await live('storeman', [15, 16]);
    expect([...told.keys()]).toEqual([15]);
    expect(told.get(15)).toContain('overdue in store');
  });

  it('only what is overdue: nothing ahead of its due day', async () => {
    await yard.choose('storeman', { digest: 'overdueOnly' });
    await yard.dueOn('ONLY-1', onDay(30));
    const told = await live('storeman', [23, 24, 25, 31]);
    expect(told.get(23)).toContain('WEEK-1');
    expect(told.get(23)).not.toContain('ONLY-1');
    expect(told.get(31)).toContain('ONLY-1');
  });

  it('what was not told before is told when somebody chooses to hear more', async () => {
    await yard.dueOn('MORE-1', onDay(39));
    expect((await live('storeman', [32, 33])).get(32)).not.toContain('MORE-1');
    await yard.choose('storeman', { digest: 'daily' });
    expect((await live('storeman', [35])).get(35)).toContain('MORE-1');
  });

  it('nothing to those who chose nothing, and nothing of stores that they did not choose', async () => {
    await yard.choose('examiner', {});
    await yard.choose('storeman', { digest: 'none' });
    await yard.choose('manager', { storeIds: [yard.farStoreId] });
    await yard.newItem({ tag: 'FAR-1', storeId: yard.farStoreId });
    const before = (await yard.mails('storeman')).length;
    const told = await live('manager', [42]);
    expect(told.get(42)).toContain('FAR-1');
    expect(told.get(42)).not.toContain('WEEK-1');
    expect(await yard.mails('storeman')).toHaveLength(before);
    await yard.choose('manager', { storeIds: null });
  });

  it('says to a competent person what they can do', async () => {
    const { id } = await yard.dueOn('DO-1', onDay(50), { storeId: yard.farStoreId });
    const reference = `DO-${engine}`;
    const row = { itemId: id, storeId: yard.farStoreId, reference, from: onDay(50), to: onDay(55) };
    await yard.remind(yard.farStoreId, { leadDays: [7] });
    await promise(yard, row);
    const [text = ''] = (await live('examiner', [43])).values();
    expect(text).toContain('One visit of yours would clear 2 items');
    expect(text).toContain('Told of before, and waiting for an examination.');
    expect(text).toContain(`job ${reference}`);
    expect(text).not.toMatch(/[Pp]ut these aside|Keep them aside/);
  });

  it('one mail of two stores in different zones, each with its own today', async () => {
    const place = { name: 'Auckland quay', address: '3 Quay', scheme: 'gb', timeZone: 'Pacific/Auckland' };
    const { body } = await yard.manager.post('/api/stores').send(place).expect(201);
    await yard.remind(body.id, { leadDays: [7] });
    await yard.dueOn('ZONE-L', onDay(58));
    // Seven days before is a Tuesday in London's evening and already that Wednesday in Auckland.
    await yard.dueOn('ZONE-A', onDay(59), { storeId: body.id });
    await yard.remind(yard.storeId, { digestTime: '20:00' });
    const evening = `${onDay(51)}T20:30:00.000Z`;
    await yard.digests(evening);
    const [mail, ...more] = (await yard.mails('manager')).filter(({ decidedAt }) => decidedAt === evening);
    expect(more).toEqual([]);
    expect(mail?.plainText).toContain('ZONE-L');
    expect(mail?.plainText).toContain('ZONE-A');
    expect(mail?.plainText).toContain(`by ${shortDay(onDay(59))}, in 7 days`);
    await yard.deliver(evening);
    await yard.remind(yard.storeId, { digestTime: '06:00' });
  });

  it('a digest that fails keeps nobody else from theirs, and is made by the next look', async () => {
    const instant = morning(onDay(56));
    await yard.choose('storeman', { digest: 'daily' });
    await yard.dueOn('LATE-1', onDay(63));
    const [one] = await yard.mails('manager');
    // A mail that has the name of the manager's digest already: it cannot be put in the outbox.
    const clash = `digest:${one?.personId}:${onDay(56)}`;
    const rename = (subjectKey: string) =>
      yard.write((manager) => manager.update('mail', { id: one?.id }, { subjectKey }));
    await rename(clash);
    await expect(yard.digests(instant)).rejects.toThrow(AggregateError);
    const toldAt = async (reader: MailReader) =>
      (await yard.mails(reader)).filter(({ decidedAt }) => decidedAt === instant).length;
    expect([await toldAt('storeman'), await toldAt('examiner'), await toldAt('manager')]).toEqual([1, 1, 0]);
    await rename('digest:another');
    expect(await yard.digests(instant)).toBe(1);
    expect(await toldAt('manager')).toBe(1);
  });
});

/** The next day from today on which the clocks of a zone go forward or back, at the hour that is not or is twice. */
function nextChange(timeZone: string, hours: 23 | 25): Day {
  let day = Temporal.Now.plainDateISO(timeZone);
  while (day.toZonedDateTime(timeZone).hoursInDay !== hours) day = day.add({ days: 1 });
  return toDay(day.toString());
}

describe.each(ENGINES)('a digest at half past two when the clocks change on %s', (engine) => {
  let yard: MailYard;
  let berlin: number;
  beforeAll(async () => {
    yard = await startMailYard(engine);
    const place = { name: 'Berlin', address: '4 Quay', scheme: 'gb', timeZone: 'Europe/Berlin' };
    berlin = (await yard.manager.post('/api/stores').send(place).expect(201)).body.id;
    // Clocks change on Sundays.
    await yard.remind(berlin, { workDays: [1, 2, 3, 4, 5, 6, 7], digestTime: '02:30' });
    await yard.newItem({ tag: 'CLOCK-1', storeId: berlin });
    await yard.choose('storeman', { storeIds: [berlin] });
  });
  afterAll(() => yard.close());

  /** At which of the quarter hours of a night, in UTC, a mail was decided. */
  async function nightOf(day: Day): Promise<string[]> {
    const decided: string[] = [];
    for (let minutes = 0; minutes < 5 * 60; minutes += 15) {
      const at = `${day}T0${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}:00.000Z`;
      if ((await yard.digests(at)) > 0) decided.push(at.slice(11, 16));
      await yard.deliver(at);
    }
    return decided;
  }

  // RFC 5545, 3.3.5: a local time that does not exist is read with the offset before the gap; of two, the first.
  it('comes once on the day that has no such time: at 03:30, which is 01:30 in UTC', async () => {
    expect(await nightOf(nextChange('Europe/Berlin', 23))).toEqual(['01:30']);
  });

  it('comes once on the day that has it twice: at the first, which is 00:30 in UTC', async () => {
    expect(await nightOf(nextChange('Europe/Berlin', 25))).toEqual(['00:30']);
  });
});
