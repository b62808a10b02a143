import { Temporal } from 'temporal-polyfill';
import { addDays, weekday, type Day } from '../calendar/day.js';
import type { DigestChoice } from './digest-choice.js';
import { isWorkDay, type WorkCalendar } from './work-calendar.js';

/**
 * The instant of a local day and time, as ISO 8601 in UTC with milliseconds. A time that the day does not have,
 * because the clock goes forward over it, is taken as much later as the clock goes forward (02:30 becomes 03:30); of
 * a time that it has twice, the first is meant. That is what RFC 5545 section 3.3.5 asks of local times.
 * @throws RangeError for a time that is not `HH:MM` or a time zone that is not known.
 */
export function digestInstant(day: Day, time: string, timeZone: string): string {
  return Temporal.PlainDate.from(day)
    .toPlainDateTime(Temporal.PlainTime.from(time))
    .toZonedDateTime(timeZone, { disambiguation: 'compatible' })
    .toInstant()
    .toString({ smallestUnit: 'millisecond' });
}

/**
 * True on a day on which a person with this choice may get a digest. Once a week means the first working day of the
 * ISO 8601 week; a week without one has none, and the next week tells its reminders. The others may get one any day,
 * because overdue gear that is out on a job does not wait for Monday.
 */
export function isDigestDay(choice: DigestChoice, today: Day, calendar: WorkCalendar): boolean {
  return choice !== 'weekly' || isFirstWorkDayOfWeek(today, calendar);
}

function isFirstWorkDayOfWeek(today: Day, calendar: WorkCalendar): boolean {
  if (!isWorkDay(today, calendar)) return false;
  for (let back = weekday(today) - 1; back > 0; back -= 1)
    if (isWorkDay(addDays(today, -back), calendar)) return false;
  return true;
}
