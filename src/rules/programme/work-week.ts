import { addDays, daysBetween, weekday, type Day } from '../calendar/day.js';

/** The working days of a week, counted from Monday: 5 to Friday, 6 to Saturday, 7 to Sunday. */
export type WorkDaysPerWeek = number;

/** True for a day on which the site works. */
export function isWorkDay(day: Day, workDaysPerWeek: WorkDaysPerWeek): boolean {
  return weekday(day) <= workDaysPerWeek;
}

/** The day itself where the site works on it, or the next day on which it does. */
export function workDayFrom(day: Day, workDaysPerWeek: WorkDaysPerWeek): Day {
  return isWorkDay(day, workDaysPerWeek) ? day : addDays(day, 8 - weekday(day));
}

/** The day so many working days after a working day; negative counts back. */
export function addWorkDays(day: Day, count: number, workDaysPerWeek: WorkDaysPerWeek): Day {
  const sinceMonday = weekday(day) - 1;
  const place = sinceMonday + count;
  const weeks = Math.floor(place / workDaysPerWeek);
  return addDays(day, weeks * 7 + (place - weeks * workDaysPerWeek) - sinceMonday);
}

/** The working days from one day through another, both included; nought where the second comes first. */
export function workDaysThrough(from: Day, to: Day, workDaysPerWeek: WorkDaysPerWeek): number {
  if (to < from) return 0;
  return (
    workDaysSinceMonday(from, addDays(to, 1), workDaysPerWeek) -
    workDaysSinceMonday(from, from, workDaysPerWeek)
  );
}

/** The working days from the Monday of the week of `start` up to `day`, which is not counted itself. */
function workDaysSinceMonday(start: Day, day: Day, workDaysPerWeek: WorkDaysPerWeek): number {
  const days = weekday(start) - 1 + daysBetween(start, day);
  const weeks = Math.floor(days / 7);
  return weeks * workDaysPerWeek + Math.min(days - weeks * 7, workDaysPerWeek);
}
