import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DigestRunEntity } from '../../src/reminders/digest/digest-run.entity.js';
import { addDays, type Day } from '../../src/rules/calendar/day.js';
import { Reads } from '../../src/storage/reads.js';
import { shortDay } from '../../src/web/sentences/words.js';
import { ENGINES } from '../support/engines.js';
import { nextWeekday, startMailYard, type MailReader, type MailYard } from '../support/mail-yard.js';
import { promise } from '../support/promise.js';

/** Half past seven in the morning, UTC: past six in London, summer and winter. */
const morning = (day: Day) => `${day}T07:30:00.000Z`;

describe.each(ENGINES)('daily mail of what falls due on %s', (engine) => {
  let yard: MailYard;
  /** A Monday some weeks off, so that nothing of a test is due before it. */
  let monday: Day;
  const onDay = (offset: number) => addDays(monday, offset);
  beforeAll(async () => {
    yard = await startMailYard(engine);
    monday = nextWeekday(yard.day(60), 1);
    await yard.choose('storeman', { urgent: false });
  });
  afterAll(() => yard.close());

  /** What came to someone on each of some days, each delivered before the next; on one line. */
  async function live(reader: MailReader, days: readonly Day[]): Promise<Map<Day, string>> {
    const told = new Map<Day, string>();
    for (const day of days) {
      const before = (await yard.mails(reader)).length;
      await yard.digests(morning(day));
      await yard.deliver(morning(day));
      const [mail] = (await yard.mails(reader)).slice(before);
      if (mail) told.set(day, mail.plainText.replace(/\s+/g, ' '));
    }
    return told;
  }

  const days = (from: number, to: number) =>
    Array.from({ length: to - from + 1 }, (_, index) => onDay(from + index));

  it('comes on each lead day, moved to the working day before a weekend or a holiday', async () => {
    // Due on a Saturday: seven days before is a Saturday too, and the Friday before that is a holiday.
    const saturday = onDay(12);
    await yard.remind(yard.storeId, { leadDays: [7, 1], holidays: [onDay(4)] });
    await yard.dueOn('SAT-1', saturday);
    const told = await live('storeman', days(0, 13));
    const about = [...told].filter(([, text]) => text.includes('SAT-1')).map(([day]) => day);
    expect(about).toEqual([onDay(3), onDay(11)]);
    expect(told.get(onDay(3))).toContain(`by ${shortDay(saturday)}`);
    expect(told.get(onDay(11))).toContain('tomorrow');
    expect(told.size).toBe(2);
  });

  it('tells of overdue gear every working day until it is examined, at first by itself, then in short', async () => {
    const told = await live('storeman', days(14, 22));
    // The Saturday was its last day: from Sunday on it is overdue, and from Monday on that is told.
    expect([...told.keys()]).toEqual(days(14, 18).concat(days(21, 22)));
    const text = told.get(onDay(14)) ?? '';
    expect(text).toContain(`was due on ${shortDay(onDay(12))}, 2 days ago`);
    expect(text).toContain('SAT-1 overdue in store');
    expect(text).toMatch(/ http:\/\/127\.0\.0\.1:\d+\/register\/\d+ /);
    const tuesday = told.get(onDay(15)) ?? '';
    expect(tuesday).toContain('SAT-1 still overdue in store');
    expect(tuesday).toContain('* Yard: 1 SAT-1. http');
  });

  it('says nothing when there is nothing to say, and remembers that', async () => {
    await yard.remind(yard.storeId, { workDays: [1] });
    const day = onDay(23);
    await yard.choose('storeman', { digest: 'overdueOnly' });
    expect((await live('storeman', [day])).size).toBe(0);
    const runs = await yard.app.get(Reads).manager.findBy(DigestRunEntity, { onDay: day });
    expect(runs.map(({ mailId }) => mailId)).toEqual([null]);
    await yard.remind(yard.storeId, { workDays: [1, 2, 3, 4, 5] });
    await yard.choose('storeman', { digest: 'daily' });
  });

  it('merges what a pause of five days left untold into one mail', async () => {
    await yard.dueOn('GAP-1', onDay(31 + 7));
    await yard.dueOn('GAP-2', onDay(33 + 7));
    await yard.dueOn('GAP-3', onDay(36 + 7));
    await live('storeman', [onDay(30)]);
    const told = await live('storeman', [onDay(35)]);
    expect([...told.keys()]).toEqual([onDay(35)]);
    const text = told.get(onDay(35)) ?? '';
    expect(text).toContain('GAP-1');
    expect(text).toContain('GAP-2');
    expect(text).not.toContain('GAP-3');
    expect((await live('storeman', [onDay(36)])).get(onDay(36))).toContain('GAP-3');
  });

  it('is decided once a day, however often it is looked at', async () => {
    const instant = morning(onDay(37));
    const before = (await yard.mails('storeman')).length;
    expect(await yard.digests(instant)).toBe(1);
    expect(await yard.digests(instant)).toBe(0);
    expect(await Promise.all([yard.digests(instant), yard.digests(instant)])).toEqual([0, 0]);
    expect(await yard.mails('storeman')).toHaveLength(before + 1);
    await yard.deliver(instant);
  });

  it('waits for the time of day that the store has set, and comes later when the server was off then', async () => {
    await yard.remind(yard.storeId, { digestTime: '15:00' });
    expect(await yard.digests(`${onDay(38)}T13:30:00.000Z`)).toBe(0);
    expect(await yard.digests(`${onDay(38)}T21:30:00.000Z`)).toBe(1);
    await yard.deliver(`${onDay(38)}T21:31:00.000Z`);
    await yard.remind(yard.storeId, { digestTime: '06:00' });
  });

  it('names the job that gear due would stop, and says when a visit clears it', async () => {
    const { id } = await yard.dueOn('JOB-1', onDay(63), { storeId: yard.farStoreId });
    const reference = `LM-${engine}`;
    const row = { itemId: id, storeId: yard.farStoreId, reference, from: onDay(60), to: onDay(70) };
    await promise(yard, row);
    const [text = ''] = (await live('storeman', [onDay(56)])).values();
    expect(text).toContain(`job ${reference} at stake`);
    expect(text).toContain(`Would stop job ${reference}`);
    // The job takes it on a Friday: the Thursday before is the last day on which it is in the store.
    expect(text).toContain(`By ${shortDay(onDay(59))} at Far yard: a competent person`);
    expect(text).toContain('One visit clears 1 item');
    expect(text).toContain(`saves job ${reference}`);
  });

  it('tells of overdue gear that is out on a job on every day, first, and what to do', async () => {
    const { id } = await yard.dueOn('OUT-1', onDay(72));
    const reference = `OUT-${engine}`;
    const row = { itemId: id, storeId: yard.storeId, reference, from: onDay(71), to: onDay(90) };
    await promise(yard, { ...row, state: 'out' });
    const told = await live('storeman', [onDay(74), onDay(75), onDay(76)]);
    const saturday = told.get(onDay(75)) ?? '';
    expect(saturday).toContain('1 overdue out on a job');
    expect(saturday).toContain('OUT-1');
    expect(saturday).toContain('Bring each back, exchange it, or have it examined on site.');
    expect(saturday).toContain(`job ${reference}`);
    expect(told.get(onDay(76))).toContain('4 days ago');
    expect(saturday).not.toContain('SAT-1');
    const friday = told.get(onDay(74)) ?? '';
    expect(friday.indexOf('OUT-1')).toBeLessThan(friday.indexOf('SAT-1'));
  });

  it('keeps to lines of 76 characters, except where an address is longer', async () => {
    for (const { plainText } of await yard.mails('storeman')) {
      const long = plainText.split('\n').filter((line) => line.length > 76);
      expect(long.filter((line) => !/^ *http\S+$/.test(line))).toEqual([]);
    }
  });
});
