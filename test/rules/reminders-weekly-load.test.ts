import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { toDay } from '../../src/rules/calendar/day.js';
import { weeklyLoad } from '../../src/rules/reminders/weekly-load.js';
import { dayAt } from './reminders-example.js';

describe('the load of the weeks ahead', () => {
  it('counts each item once, in the ISO week that luxon puts its due day in', () => {
    const anyDays = fc.array(
      fc.record({ index: fc.integer({ min: 0, max: 200 }), count: fc.integer({ min: 1, max: 9 }) }),
    );
    fc.assert(
      fc.property(anyDays, fc.integer({ min: 60, max: 120 }), (days, from) => {
        const load = weeklyLoad(
          days.map(({ index, count }) => ({ dueOn: dayAt(index), count })),
          dayAt(from),
          6,
        );
        const sumOf = (some: typeof days) => some.reduce((sum, { count }) => sum + count, 0);
        const first = DateTime.fromISO(dayAt(from)).startOf('week');
        load.forEach(({ monday, count }, week) => {
          expect(monday).toBe(first.plus({ weeks: week }).toISODate());
          const inWeek = days.filter(({ index }) => {
            const weekOf = DateTime.fromISO(dayAt(index)).startOf('week');
            return weekOf.toISODate() === monday || (week === 0 && weekOf < first);
          });
          expect(count).toBe(sumOf(inWeek));
        });
        expect(load).toHaveLength(6);
      }),
    );
  });

  it('counts in this week what is still due on the day before, at a store where it is not over', () => {
    // Sunday 2 May and Monday 3 May 2027.
    const due = [{ dueOn: toDay('2027-05-02'), count: 3 }];
    expect(weeklyLoad(due, toDay('2027-05-03'), 2)).toEqual([
      { monday: '2027-05-03', count: 3 },
      { monday: '2027-05-10', count: 0 },
    ]);
  });

  it('runs over the end of a year with 53 weeks', () => {
    // ISO 8601: 2026 has a week 53, from Monday 28 December 2026.
    const weeks = weeklyLoad([{ dueOn: toDay('2027-01-03'), count: 2 }], toDay('2026-12-30'), 2);
    expect(weeks).toEqual([
      { monday: '2026-12-28', count: 2 },
      { monday: '2027-01-04', count: 0 },
    ]);
  });
});
