import { describe, expect, it } from 'vitest';
import { heardStores } from '../../src/reminders/digest/heard-stores.js';
import { tellingStores } from '../../src/reminders/digest/telling-stores.js';
import { daysAhead, toldEntries } from '../../src/reminders/digest/told-entries.js';
import { coveredThrough, tellsToday } from '../../src/reminders/digest/told-stores.js';
import { urgentHearers } from '../../src/reminders/urgent/urgent-hearers.js';
import { addDays } from '../../src/rules/calendar/day.js';
import { reminderDays } from '../../src/rules/reminders/reminder-days.js';
import { DEFAULT_REMINDER_RULE } from '../../src/rules/reminders/reminder-rule.js';
import { TODAY, diaryEntry, mailPersonOf, tellingStore } from '../support/example-mails.js';

const onDay = (offset: number) => addDays(TODAY, offset);
const toldOf = (storeId: number, through: number, leads = true) => ({
  storeId,
  through: onDay(through),
  leads,
});

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
    { onDay: onDay(-3), told: [toldOf(1, -3), toldOf(2, -4, false)] },
    { onDay: onDay(-2), told: [toldOf(1, -2, false)] },
    { onDay: onDay(-1), told: [] },
  ];

  it('is the last day that told as much as is asked now', () => {
    expect(coveredThrough(runs, { storeId: 1, digest: 'daily' })).toBe(onDay(-3));
    expect(coveredThrough(runs, { storeId: 1, digest: 'overdueOnly' })).toBe(onDay(-2));
    expect(coveredThrough(runs, { storeId: 2, digest: 'overdueOnly' })).toBe(onDay(-4));
    expect(coveredThrough(runs, { storeId: 2, digest: 'daily' })).toBeUndefined();
    expect(coveredThrough(runs, { storeId: 3, digest: 'daily' })).toBeUndefined();
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
    expect(telling(0).map(({ storeId, coveredThrough: covered }) => [storeId, covered])).toEqual([
      [1, undefined],
    ]);
    expect(telling(-4)).toHaveLength(1);
  });
});

describe('what is told', () => {
  it('is nothing ahead of its day to those who hear of what is overdue only', () => {
    const entries = [diaryEntry(1, 7), diaryEntry(2, -1)];
    const idsTo = (digest: 'daily' | 'overdueOnly') =>
      toldEntries(entries, [tellingStore({ digest })]).map(({ entry }) => entry.itemId);
    expect(idsTo('daily')).toEqual([1, 2]);
    expect(idsTo('overdueOnly')).toEqual([2]);
    expect(toldEntries(entries, [tellingStore({ storeId: 2 })])).toEqual([]);
  });

  it('is new where it was in date on the last working day that was told', () => {
    // Told through Sunday 2 May: the last that told of overdue gear was Friday 30 April.
    const store = tellingStore({ coveredThrough: onDay(-1) });
    const fresh = (dueIn: number) => toldEntries([diaryEntry(1, dueIn)], [store]).map((entry) => entry.fresh);
    expect([fresh(-1), fresh(-2), fresh(-3), fresh(-4)]).toEqual([[true], [true], [true], [false]]);
    expect(toldEntries([diaryEntry(1, -90)], [tellingStore({ coveredThrough: undefined })])[0]?.fresh).toBe(
      true,
    );
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
