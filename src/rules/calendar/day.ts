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
  return day <= Temporal.PlainYearMonth.from({ year, month }).daysInMonth;
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
  return Temporal.PlainDate.from(day).add({ months }, { overflow: 'constrain' }).toString() as Day;
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
