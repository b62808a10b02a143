import { addDays, weekday, type Day } from '../calendar/day.js';

/** When a place works. */
export interface WorkCalendar {
  /** ISO 8601 days of the week, 1 is Monday; at least one. */
  readonly workDays: readonly number[];
  /** Days on which the place does not work, whatever day of the week they are. */
  readonly holidays: readonly Day[];
}

/** A place that closes for longer in one piece would have no working day to move to: days are looked through no further. */
const LONGEST_CLOSURE_DAYS = 60;

/** True for a day on which the place works. */
export function isWorkDay(day: Day, { workDays, holidays }: WorkCalendar): boolean {
  return workDays.includes(weekday(day)) && !holidays.includes(day);
}

/** The day itself where the place works on it, or the last working day before it. After a closure of 60 days, the day itself. */
export function workDayUpTo(day: Day, calendar: WorkCalendar): Day {
  return nearestWorkDay(day, -1, calendar);
}

/** The day itself where the place works on it, or the next working day. Before a closure of 60 days, the day itself. */
export function workDayFrom(day: Day, calendar: WorkCalendar): Day {
  return nearestWorkDay(day, 1, calendar);
}

function nearestWorkDay(day: Day, step: 1 | -1, calendar: WorkCalendar): Day {
  for (let away = 0; away <= LONGEST_CLOSURE_DAYS; away += 1) {
    const other = addDays(day, step * away);
    if (isWorkDay(other, calendar)) return other;
  }
  return day;
}
