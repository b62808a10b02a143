import { addDays, daysBetween, isDay, type Day } from '../../rules/calendar/day.js';

/** A store that is closed for longer than this in one piece has hardly a rule to go by. */
const LONGEST_RANGE_DAYS = 60;

/** `2026-12-24 to 2027-01-01`; a dash does as well. */
const RANGE = /^(\S+)\s*(?:\bto\b|[–—]|\s-\s)\s*(\S+)$/;

/** Days as they are typed, one or one range to a line, or what is wrong with which line. */
export function readHolidays(text: string): {
  readonly days: readonly Day[];
  readonly faults: readonly string[];
} {
  const lines = text.split(/\r\n|\r|\n/).map((line, index) => ({ text: line.trim(), number: index + 1 }));
  const read = lines.filter((line) => line.text !== '').map((line) => ({ ...line, ...readLine(line.text) }));
  return {
    days: [...new Set(read.flatMap(({ days = [] }) => days))].sort(),
    faults: read.flatMap(({ number, fault }) => (fault ? [`line ${number}: ${fault}`] : [])),
  };
}

/** Days as they are shown to be changed: those in a row as one range. */
export function holidayLines(days: readonly Day[]): string {
  const ranges: { first: Day; last: Day }[] = [];
  for (const day of [...days].sort()) {
    const range = ranges.at(-1);
    if (range && addDays(range.last, 1) === day) range.last = day;
    else ranges.push({ first: day, last: day });
  }
  return ranges.map(({ first, last }) => (first === last ? first : `${first} to ${last}`)).join('\n');
}

function readLine(line: string): { days?: readonly Day[]; fault?: string } {
  const [, first = line, last = line] = RANGE.exec(line) ?? [];
  const wrong = [first, last].find((text) => !isDay(text));
  if (!isDay(first) || !isDay(last))
    return { fault: `'${shortened(wrong ?? line)}' is no day that exists, written YYYY-MM-DD` };
  const more = daysBetween(first, last);
  if (more < 0) return { fault: `${last} comes before ${first}` };
  if (more >= LONGEST_RANGE_DAYS)
    return { fault: `${more + 1} days in a row; write at most ${LONGEST_RANGE_DAYS}` };
  return { days: Array.from({ length: more + 1 }, (_, index) => addDays(first, index)) };
}

function shortened(text: string): string {
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}
