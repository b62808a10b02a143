import { describe, expect, it } from 'vitest';
import { heardStores } from '../../src/reminders/digest/heard-stores.js';
import { tellingStores } from '../../src/reminders/digest/telling-stores.js';
import { daysAhead, toldEntries, type TellingStore } from '../../src/reminders/digest/told-entries.js';
import { covered, tellsToday } from '../../src/reminders/digest/told-stores.js';
import { urgentHearers } from '../../src/reminders/urgent/urgent-hearers.js';
import { addDays, type Day } from '../../src/rules/calendar/day.js';
import { reminderDays } from '../../src/rules/reminders/reminder-days.js';
import { DEFAULT_REMINDER_RULE } from '../../src/rules/reminders/reminder-rule.js';
import { TODAY, diaryEntry, mailPersonOf, tellingStore, toldThrough } from '../support/example-mails.js';

const onDay = (offset: number) => addDays(TODAY, offset);
const toldOf = (storeId: number, through: number, leads = true) => ({
  storeId,
  through: onDay(through),
  leads,
});

/** No item has become due on its day of late. */
const LONG_SINCE: ReadonlyMap<number, string> = new Map();

describe('the stores a person is told of', () => {
  it('are those chosen, in the order of their numbers, and of nobody without an address', () => {
    const people = [
      mailPersonOf(1),
      mailPersonOf(2, { storeIds: [2], digest: 'weekly' }),
      mailPersonOf(3, { hasAddress: false, address: null }),
      mailPersonOf(4, { active: false }),
      mailPersonOf(5, { roles: ['crew'] }),
      mailPersonOf(6, { digest: 'none' }),
    ];
    const heard = heardStores(people, [3, 2, 1]);
    expect([...heard.keys()]).toEqual([1, 2]);
    expect(heard.get(1)?.map(({ storeId }) => storeId)).toEqual([1, 2, 3]);
    expect(heard.get(2)).toEqual([{ storeId: 2, digest: 'weekly', byDefault: false }]);
  });

  it('are for every manager those that nobody chose, of what is overdue', () => {
    const people = [
      mailPersonOf(1, { storeIds: [1] }),
      mailPersonOf(2, { roles: ['manager'], storeIds: [1], digest: 'weekly' }),
      mailPersonOf(3, { roles: ['manager'], digest: 'none' }),
    ];
    const heard = heardStores(people, [1, 2]);
    expect(heard.get(1)).toEqual([{ storeId: 1, digest: 'daily', byDefault: false }]);
    expect(heard.get(2)).toEqual([
      { storeId: 1, digest: 'weekly', byDefault: false },
      { storeId: 2, digest: 'overdueOnly', byDefault: true },
    ]);
    expect(heard.get(3)).toEqual([{ storeId: 2, digest: 'overdueOnly', byDefault: true }]);
  });
});

describe('how far a person was told', () => {
  const runs = [
    { onDay: onDay(-3), decidedAt: 'third', told: [toldOf(1, -3), toldOf(2, -4, false)] },
    { onDay: onDay(-2), decidedAt: 'second', told: [toldOf(1, -2, false)] },
    { onDay: onDay(-1), decidedAt: 'first', told: [] },
  ];

  it('is the last day that told as much as is asked now', () => {
    expect(covered(runs, { storeId: 1, digest: 'daily' })).toEqual({ through: onDay(-3), at: 'third' });
    expect(covered(runs, { storeId: 1, digest: 'overdueOnly' })).toEqual({
      through: onDay(-2),
      at: 'second',
    });
    expect(covered(runs, { storeId: 2, digest: 'overdueOnly' })).toEqual({ through: onDay(-4), at: 'third' });
    expect(covered(runs, { storeId: 2, digest: 'daily' })).toBeUndefined();
    expect(covered(runs, { storeId: 3, digest: 'daily' })).toBeUndefined();
    const before = (day: Day) => day < onDay(-2);
    expect(covered(runs, { storeId: 1, digest: 'overdueOnly' }, before)?.at).toBe('third');
  });

  it('decides whether a weekly digest is due, or overdue', () => {
    const rule = DEFAULT_REMINDER_RULE;
    const tells = (today: number, toldThrough: number) =>
      tellsToday('weekly', { today: onDay(today), toldThrough: onDay(toldThrough), rule });
    expect(tells(0, -7)).toBe(true);
    expect(tells(1, 0)).toBe(false);
    expect(tells(1, -1)).toBe(true);
    expect(tells(6, 0)).toBe(false);
    expect(tells(6, -1)).toBe(true);
    expect(tells(6, -300)).toBe(true);
    expect(tellsToday('daily', { today: onDay(3), toldThrough: onDay(2), rule })).toBe(true);
  });

  it('is kept apart for working days', () => {
    // Today is a Monday: Friday and Saturday were told.
    const runs = [-3, -2].map((offset) => {
      return { onDay: onDay(offset), decidedAt: `day ${offset}`, told: [toldOf(1, offset)] };
    });
    const store = { storeId: 1, timeZone: 'Europe/London', today: TODAY };
    const stores = new Map([[1, { ...store, rule: DEFAULT_REMINDER_RULE }]]);
    const heard = [{ storeId: 1, digest: 'daily' as const, byDefault: false }];
    const [telling] = tellingStores(heard, { stores, runs, since: onDay(-3) });
    expect(telling?.covered?.at).toBe('day -2');
    expect(telling?.coveredAtWork?.at).toBe('day -3');
  });

  it('begins with the first day on which anything was decided', () => {
    const stores = new Map([
      [1, { storeId: 1, timeZone: 'Europe/London', today: onDay(1), rule: DEFAULT_REMINDER_RULE }],
    ]);
    const heard = [
      { storeId: 1, digest: 'weekly' as const, byDefault: false },
      { storeId: 4, digest: 'daily' as const, byDefault: false },
    ];
    const telling = (since: number | undefined) =>
      tellingStores(heard, { stores, runs: [], since: since === undefined ? undefined : onDay(since) });
    expect(telling(undefined)).toEqual([]);
    expect(telling(1)).toEqual([]);
    expect(telling(0).map(({ storeId, covered: last }) => [storeId, last])).toEqual([[1, undefined]]);
    expect(telling(-4)).toHaveLength(1);
  });
});

describe('what is told', () => {
  it('is nothing ahead of its day to those who hear of what is overdue only', () => {
    const entries = [diaryEntry(1, 7), diaryEntry(2, -1)];
    const idsTo = (digest: 'daily' | 'overdueOnly') =>
      toldEntries(entries, [tellingStore({ digest })], LONG_SINCE).map(({ entry }) => entry.itemId);
    expect(idsTo('daily')).toEqual([1, 2]);
    expect(idsTo('overdueOnly')).toEqual([2]);
    expect(toldEntries(entries, [tellingStore({ storeId: 2 })], LONG_SINCE)).toEqual([]);
  });

  it('is new where it was in date on the last working day that was told', () => {
    // Told through Sunday 2 May: the last that told of overdue gear was Friday 30 April.
    const store = tellingStore({ covered: toldThrough(-1), coveredAtWork: toldThrough(-3) });
    const fresh = (dueIn: number) =>
      toldEntries([diaryEntry(1, dueIn)], [store], LONG_SINCE).map((entry) => entry.fresh);
    expect([fresh(-1), fresh(-2), fresh(-3), fresh(-4)]).toEqual([[true], [true], [true], [false]]);
    expect(
      toldEntries([diaryEntry(1, -90)], [tellingStore({ covered: undefined })], LONG_SINCE)[0]?.fresh,
    ).toBe(true);
  });

  it('is at once what came after its lead time and after the last digest, unless it is overdue', () => {
    // Of an item due on Saturday 8 May the reminder of a week before was on Friday 30 April; told through Sunday 2 May.
    const store = tellingStore({ covered: toldThrough(-1), coveredAtWork: toldThrough(-3) });
    const count = (dueIn: number, since: string) =>
      toldEntries([diaryEntry(1, dueIn)], [store], new Map([[1, since]])).length;
    expect(count(5, '2027-05-02T05:00:00.000Z')).toBe(0);
    expect(count(5, '2027-05-02T05:00:00.001Z')).toBe(1);
    // 30 days before is ahead still.
    expect(count(40, '2027-05-02T05:00:00.001Z')).toBe(0);
    const sunday = tellingStore({ today: onDay(6), covered: toldThrough(5), coveredAtWork: toldThrough(4) });
    const overdue = { ...diaryEntry(1, -1), today: onDay(6) };
    expect(toldEntries([overdue], [sunday], new Map([[1, '2027-05-09T04:00:00.000Z']]))).toEqual([]);
  });

  it('is new where it has been overdue for long, but came after the last working day that was told', () => {
    const fresh = (store: TellingStore, since: string) =>
      toldEntries([diaryEntry(1, -90)], [store], new Map([[1, since]])).map((entry) => entry.fresh);
    const onMonday = tellingStore({ covered: toldThrough(-1), coveredAtWork: toldThrough(-3) });
    expect(fresh(onMonday, '2027-04-30T05:00:00.001Z')).toEqual([true]);
    expect(fresh(onMonday, '2027-04-30T05:00:00.000Z')).toEqual([false]);
    // The first digest ever came on a Saturday, and told everything.
    const saturdayOnly = tellingStore({ covered: toldThrough(-2), coveredAtWork: undefined });
    expect(fresh(saturdayOnly, '2027-04-30T07:00:00.000Z')).toEqual([false]);
    expect(fresh(saturdayOnly, '2027-05-02T07:00:00.000Z')).toEqual([true]);
  });

  it('never reaches further ahead than is looked', () => {
    for (const [holidays, offset] of [
      [[], 0],
      [[], 4],
      [[onDay(7), onDay(8)], 4],
    ] as const) {
      const rule = { ...DEFAULT_REMINDER_RULE, holidays };
      const today = onDay(offset);
      const ahead = daysAhead(rule, today);
      const reminded = (days: number) =>
        reminderDays(addDays(today, days), rule).some(({ on }) => on <= today);
      expect(reminded(ahead)).toBe(true);
      expect(reminded(ahead + 1)).toBe(false);
    }
  });
});

describe('who is told at once', () => {
  const hearers = (people: Parameters<typeof urgentHearers>[0], matter: 'danger' | 'booking' = 'danger') => [
    ...urgentHearers(people, { matter, storeIds: [1, 2] }),
  ];
  const manager = { roles: ['manager'] } as const;
  const off = { urgent: false } as const;

  it('are storeman and manager of any of the stores who chose to', () => {
    const people = [
      mailPersonOf(1),
      mailPersonOf(2, { ...manager, storeIds: [2] }),
      mailPersonOf(3, { storeIds: [3] }),
      mailPersonOf(4, off),
      mailPersonOf(5, { active: false }),
      mailPersonOf(6, { address: null, hasAddress: false }),
    ];
    expect(hearers(people)).toEqual([1, 2]);
    expect(hearers(people, 'booking')).toEqual([1, 2]);
  });

  it('are of a danger also others who chose to', () => {
    const people = [
      mailPersonOf(1),
      mailPersonOf(2, { roles: ['crew'] }),
      mailPersonOf(3, { roles: ['competentPerson'] }),
    ];
    expect(hearers(people)).toEqual([1, 2, 3]);
    expect(hearers(people, 'booking')).toEqual([1]);
  });

  it('are all managers where nobody in charge chose to, and the storemen where there is no manager', () => {
    const far = mailPersonOf(3, { ...manager, ...off, storeIds: [9] });
    expect(hearers([mailPersonOf(1, off), mailPersonOf(2, { roles: ['crew'] }), far])).toEqual([3, 2]);
    expect(hearers([mailPersonOf(1, off), mailPersonOf(2, { ...off, storeIds: [9] })], 'booking')).toEqual([
      1,
    ]);
    expect(hearers([mailPersonOf(1, { roles: ['crew'], ...off })])).toEqual([]);
  });
});
