import fc from 'fast-check';
import { DateTime } from 'luxon';
import { toDay, type Day } from '../../src/rules/calendar/day.js';
import type { WorkCalendar } from '../../src/rules/reminders/work-calendar.js';

/** The day so many days after 1 January 2027, by luxon. 2028 has a leap day: day 424. */
export function dayAt(index: number): Day {
  const known = DAYS.get(index) ?? toDay(DateTime.utc(2027, 1, 1).plus({ days: index }).toISODate() ?? '');
  DAYS.set(index, known);
  return known;
}

/** The days of the week of the week before 1 January 2027 and of the one from it on. */
const WEEKDAYS = Array.from({ length: 14 }, (_, n) => DateTime.utc(2027, 1, 1).plus({ days: n - 7 }).weekday);

/** Luxon takes its time, and the same days are asked for again and again. */
const DAYS = new Map<number, Day>();

/** Whether a place works on a day, by luxon's days of the week. */
export function worksOn(index: number, { workDays, holidays }: WorkCalendar): boolean {
  return workDays.includes(WEEKDAYS[(index % 7) + 7] ?? 0) && !holidays.includes(dayAt(index));
}

/** Working weeks of every shape with up to `most` closed days among the first 800 from 2027: never closed for long. */
export function anyCalendar(most = 25): fc.Arbitrary<WorkCalendar> {
  return fc.record({
    workDays: fc.uniqueArray(fc.integer({ min: 1, max: 7 }), { minLength: 1, maxLength: 7 }),
    holidays: fc.uniqueArray(fc.integer({ min: 0, max: 800 }).map(dayAt), { maxLength: most }),
  });
}
