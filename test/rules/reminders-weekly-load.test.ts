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
        expect(load.overdue).toBe(sumOf(days.filter(({ index }) => index < from)));
        const first = DateTime.fromISO(dayAt(from)).startOf('week');
        load.weeks.forEach(({ monday, count }, week) => {
          expect(monday).toBe(first.plus({ weeks: week }).toISODate());
          const inWeek = days.filter(
            ({ index }) =>
              index >= from && DateTime.fromISO(dayAt(index)).startOf('week').toISODate() === monday,
          );
          expect(count).toBe(sumOf(inWeek));
        });
        expect(load.weeks).toHaveLength(6);
      }),
    );
  });

  it('counts what is due today in the week of today: it is in date through its due day', () => {
    const today = toDay('2027-05-05');
    expect(weeklyLoad([{ dueOn: today, count: 3 }], today, 1)).toEqual({
      overdue: 0,
      weeks: [{ monday: '2027-05-03', count: 3 }],
    });
  });

  it('runs over the end of a year with 53 weeks', () => {
    // ISO 8601: 2026 has a week 53, from Monday 28 December 2026.
    const { weeks } = weeklyLoad([{ dueOn: toDay('2027-01-03'), count: 2 }], toDay('2026-12-30'), 2);
    expect(weeks).toEqual([
      { monday: '2026-12-28', count: 2 },
      { monday: '2027-01-04', count: 0 },
    ]);
  });
});
