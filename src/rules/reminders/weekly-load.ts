import { addDays, weekday, type Day } from '../calendar/day.js';

/** How many items fall due in one week. */
export interface WeekLoad {
  /** Its first day: ISO 8601 weeks begin on Monday. */
  readonly monday: Day;
  readonly count: number;
}

/**
 * The items due in each of so many weeks, the first being the week of `today`. What is due before that counts in the
 * first week, and what is due after the last of them is left out. Meant for what is still in date: what is overdue is
 * no load of a week to come.
 */
export function weeklyLoad(
  days: readonly { readonly dueOn: Day; readonly count: number }[],
  today: Day,
  weeks: number,
): WeekLoad[] {
  const firstMonday = addDays(today, 1 - weekday(today));
  return Array.from({ length: weeks }, (_, week) => {
    const monday = addDays(firstMonday, 7 * week);
    const end = addDays(monday, 7);
    const isIn = (dueOn: Day): boolean => dueOn < end && (week === 0 || dueOn >= monday);
    return { monday, count: days.reduce((sum, { dueOn, count }) => (isIn(dueOn) ? sum + count : sum), 0) };
  });
}
