import { describe, expect, it } from 'vitest';
import { plannedThrough, storeVisits } from '../../src/reminders/digest/store-visits.js';
import { addDays, toDay } from '../../src/rules/calendar/day.js';
import { DEFAULT_REMINDER_RULE } from '../../src/rules/reminders/reminder-rule.js';
import { TODAY, diaryEntry } from '../support/example-mails.js';

const store = (storeId: number, differences: object = {}) => ({
  ...{ storeId, timeZone: 'Europe/London', today: TODAY, rule: DEFAULT_REMINDER_RULE },
  ...differences,
});

describe('the visits that a digest tells of', () => {
  it('are planned as far as the diary looks, or as far as the lead times where those go further', () => {
    // Three months after 3 May and six weeks; 200 days after it, and six weeks.
    expect(plannedThrough(store(1))).toBe(toDay('2027-09-14'));
    const rule = { ...DEFAULT_REMINDER_RULE, leadDays: [200] };
    expect(plannedThrough({ today: TODAY, rule })).toBe(addDays(TODAY, 242));
  });

  it('clear what falls due at their own store, and say which jobs that saves', () => {
    const job = { jobId: 9, reference: 'LM-9', from: addDays(TODAY, 8), to: addDays(TODAY, 20), out: false };
    const entries = [
      diaryEntry(1, 10, { jobs: [job], stops: [job] }),
      diaryEntry(2, 12),
      diaryEntry(3, 134),
      diaryEntry(4, 135),
      diaryEntry(5, 9, { storeId: 2 }),
    ];
    const visits = storeVisits(entries, [store(1), store(2)]);
    expect(visits.get(1)?.map(({ itemIds, saves }) => [itemIds, saves])).toEqual([
      [[1, 2], ['LM-9']],
      [[3], []],
    ]);
    expect(visits.get(2)?.map(({ itemIds }) => itemIds)).toEqual([[5]]);
  });
});
