import { weekday, type Day } from '../../rules/calendar/day.js';
import { day } from './words.js';

/** The days of the week in the order of ISO 8601. */
export const WEEKDAYS = [
  'Monday',
  'Tuesday',
  'Wednesday',
  'Thursday',
  'Friday',
  'Saturday',
  'Sunday',
] as const;

/** A day with its day of the week: `Saturday, 12 December 2026`. */
export function dayOfWeek(value: Day): string {
  return `${WEEKDAYS[weekday(value) - 1]}, ${day(value)}`;
}
