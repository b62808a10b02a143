import { addDays, weekday, type Day } from '../calendar/day.js';

/** How many items fall due in one week. */
export interface WeekLoad {
  /** Its first day: ISO 8601 weeks begin on Monday. */
  readonly monday: Day;
  readonly count: number;
}

/**
 * Items due before `from`, and those due in each of so many weeks, the first being the week of `from`. What is due
 * after the last of them is left out.
 */
export function weeklyLoad(
  days: readonly { readonly dueOn: Day; readonly count: number }[],
  from: Day,
  weeks: number,
): { readonly overdue: number; readonly weeks: readonly WeekLoad[] } {
  const between = (first: Day, end: Day): number =>
    days.reduce((sum, { dueOn, count }) => (dueOn >= first && dueOn < end ? sum + count : sum), 0);
  const firstMonday = addDays(from, 1 - weekday(from));
  return {
    overdue: days.reduce((sum, { dueOn, count }) => (dueOn < from ? sum + count : sum), 0),
    weeks: Array.from({ length: weeks }, (_, week) => {
      const monday = addDays(firstMonday, 7 * week);
      return { monday, count: between(monday < from ? from : monday, addDays(monday, 7)) };
    }),
  };
}
