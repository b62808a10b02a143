import { Temporal } from 'temporal-polyfill';

declare const dayBrand: unique symbol;

/** A calendar day as `YYYY-MM-DD`. Days compare correctly as strings. No time, no zone. */
export type Day = string & { readonly [dayBrand]: true };

/** True for a day that exists, written `YYYY-MM-DD`, from 1900 to 2999: `'2026-02-30'` is not one. */
export function isDay(text: string): text is Day {
  const match = /^(1[9]\d\d|2\d\d\d)-(\d\d)-(\d\d)$/.exec(text);
  if (!match) return false;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  if (month < 1 || month > 12 || day < 1) return false;
  return day <= daysInMonth(year, month);
}

/**
 * Brands text as a day.
 * @throws RangeError when it is not an existing day in `YYYY-MM-DD`.
 */
export function toDay(text: string): Day {
  if (!isDay(text)) throw new RangeError(`'${text}' is not a day that exists, written YYYY-MM-DD`);
  return text;
}

/**
 * The same day of the month so many months later (negative: earlier), clamped to the end of a shorter month:
 * 31 August + 6 months is the last day of February. Count from the day of examination, never from an earlier result.
 */
export function addMonths(day: Day, months: number): Day {
  const count = Number(day.slice(0, 4)) * 12 + Number(day.slice(5, 7)) - 1 + months;
  const [year, month] = [Math.floor(count / 12), (count % 12) + 1];
  if (!Number.isInteger(count) || year < 1900 || year > 2999) return byTemporal(day, months);
  const date = Math.min(Number(day.slice(8)), daysInMonth(year, month));
  return `${year}-${twoDigits(month)}-${twoDigits(date)}` as Day;
}

/** The long way round, for months beyond the days that can be written here, and for what is no whole month. */
function byTemporal(day: Day, months: number): Day {
  return Temporal.PlainDate.from(day).add({ months }, { overflow: 'constrain' }).toString() as Day;
}

/** The days of a month of the Gregorian calendar: every fourth year is leap, of the hundreds every fourth only. */
function daysInMonth(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

function twoDigits(value: number): string {
  return value < 10 ? `0${value}` : String(value);
}

/** The day so many days later; negative counts back. */
export function addDays(day: Day, days: number): Day {
  return Temporal.PlainDate.from(day).add({ days }).toString() as Day;
}

/** Days from `from` to `to`; negative when `to` comes first. */
export function daysBetween(from: Day, to: Day): number {
  return Temporal.PlainDate.from(from).until(to, { largestUnit: 'day' }).days;
}

/** The earliest of the days given, or undefined of none. */
export function earliest(days: readonly Day[]): Day | undefined {
  return days.reduce<Day | undefined>(
    (first, day) => (first === undefined || day < first ? day : first),
    undefined,
  );
}

/** The day of the week as ISO 8601 numbers it: 1 is Monday, 7 is Sunday. */
export function weekday(day: Day): number {
  return Temporal.PlainDate.from(day).dayOfWeek;
}
