import { isDay, type Day } from '../../rules/calendar/day.js';
import { MONTH_WORDS } from './month-words.js';
import { plainWords } from './plain-words.js';

/** Which of the two numbers before the year is the day. Under `unknown` only dates that read one way are read. */
export type DateOrder = 'dayFirst' | 'monthFirst' | 'unknown';

export type DateReading =
  | { readonly ok: true; readonly day: Day }
  | { readonly ok: false; readonly reason: 'not_a_day' | 'ambiguous_date' | 'two_digit_year' };

const NUMBERS = /^(\d{1,2})([./-])(\d{1,2})\2(\d{4}|\d{2})$/;
const YEAR_FIRST = /^(\d{4})([./-])(\d{1,2})\2(\d{1,2})$/;
const DAY_NAMED_MONTH = /^(\d{1,2})(?:st|nd|rd|th|er)?[. -]*([^\d\s.-]+)[. -]+(\d{4}|\d{2})$/;
const NAMED_MONTH_DAY = /^([^\d\s.-]+)[. -]*(\d{1,2})(?:st|nd|rd|th)?[, -]+(\d{4}|\d{2})$/;

/**
 * Reads a day as stores write it. Dotted dates are day-first everywhere; dates with the year first have one reading.
 * A year of two figures is refused: 09-05-26 has six readings.
 */
export function readDate(cell: string, order: DateOrder): DateReading {
  const text = cell
    .trim()
    .replace(/[T ]00:00(:00(\.0+)?)?Z?$/, '')
    .replace(/ (?:de|of) /gi, ' ');
  const yearFirst = YEAR_FIRST.exec(text);
  if (yearFirst) return existing(yearFirst[1], yearFirst[3], yearFirst[4]);
  const numbers = NUMBERS.exec(text);
  if (numbers) return readNumbers(numbers, order);
  const named = DAY_NAMED_MONTH.exec(text);
  if (named) return existing(named[3], monthOf(named[2]), named[1]);
  const american = NAMED_MONTH_DAY.exec(text);
  if (american) return existing(american[3], monthOf(american[1]), american[2]);
  return { ok: false, reason: 'not_a_day' };
}

/**
 * The order of the dates of a file, from those that can only be read one way: 31/12/2025 speaks for day-first.
 * Where the dates disagree, or none tells, it is unknown.
 */
export function detectDateOrder(cells: readonly string[]): DateOrder {
  const seen = new Set<DateOrder>();
  for (const cell of cells) {
    const [, first, sign, second] = NUMBERS.exec(cell.trim()) ?? [];
    if (sign === undefined || sign === '.') continue;
    if (Number(first) > 12) seen.add('dayFirst');
    if (Number(second) > 12) seen.add('monthFirst');
  }
  const [only, another] = [...seen];
  return only === undefined || another !== undefined ? 'unknown' : only;
}

function readNumbers(
  [, first = '', sign, second = '', year = '']: RegExpExecArray,
  order: DateOrder,
): DateReading {
  if (year.length === 2) return { ok: false, reason: 'two_digit_year' };
  const dayFirst = existing(year, second, first);
  if (sign === '.' || order === 'dayFirst') return dayFirst;
  const monthFirst = existing(year, first, second);
  if (order === 'monthFirst') return monthFirst;
  if (!monthFirst.ok) return dayFirst;
  if (!dayFirst.ok || dayFirst.day === monthFirst.day) return monthFirst;
  return { ok: false, reason: 'ambiguous_date' };
}

function existing(year = '', month = '', date = ''): DateReading {
  if (year.length === 2) return { ok: false, reason: 'two_digit_year' };
  const text = `${year}-${month.padStart(2, '0')}-${date.padStart(2, '0')}`;
  return isDay(text) ? { ok: true, day: text } : { ok: false, reason: 'not_a_day' };
}

function monthOf(word = ''): string {
  const plain = plainWords(word);
  const month = MONTH_WORDS.findIndex((words) => words.some((known) => known === plain));
  return month < 0 ? '' : String(month + 1);
}
