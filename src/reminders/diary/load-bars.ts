import type { WeekLoad } from '../../rules/reminders/weekly-load.js';
import { day } from '../../web/sentences/words.js';

/** The room of half the picture, in units of its view box: two halves stand side by side or one under the other. */
export const HALF = { width: 400, height: 190, left: 6, top: 22, bottom: 146 } as const;

const WEEKS_IN_HALF = 13;
const PITCH = 27;
const BAR_WIDTH = 19;

/** One bar: where it stands, how high it is, and what is written over and under it. */
export interface LoadBar {
  readonly key: string;
  readonly x: number;
  readonly width: number;
  readonly y: number;
  readonly height: number;
  readonly count: number;
  /** The date of the Monday; empty of what is overdue. */
  readonly date: string;
  /** The month, where the week is the first of it that is shown. */
  readonly month: string;
  readonly overdue: boolean;
  /** True of a bar that is drawn shorter than it should be, so that the others can be seen. */
  readonly cut: boolean;
}

/** The bars of the two halves: what is overdue, then week by week, all to one scale. */
export function loadBars(
  overdue: number,
  weeks: readonly WeekLoad[],
): readonly [readonly LoadBar[], readonly LoadBar[]] {
  const highest = Math.max(1, ...weeks.map((week) => week.count));
  // A long arrears would press the weeks ahead flat.
  const full = Math.max(highest, Math.min(overdue, 2 * highest));
  const heightOf = (count: number): number =>
    Math.round((Math.min(count, full) / full) * (HALF.bottom - HALF.top) * 10) / 10;
  const bar = (count: number, slot: number): Omit<LoadBar, 'key' | 'date' | 'month'> => {
    const height = heightOf(count);
    const x = HALF.left + slot * PITCH + (PITCH - BAR_WIDTH) / 2;
    const place = { x, width: BAR_WIDTH, y: HALF.bottom - height, height };
    return { ...place, count, overdue: false, cut: count > full };
  };
  const halfOf = (from: number, firstSlot: number): LoadBar[] =>
    weeks.slice(from, from + WEEKS_IN_HALF).map(({ monday, count }, index, half) => ({
      ...bar(count, firstSlot + index),
      key: monday,
      date: String(Number(monday.slice(8))),
      month: monthName(monday) === monthName(half[index - 1]?.monday) ? '' : monthName(monday),
    }));
  const late = { ...bar(overdue, 0), key: 'overdue', date: '', month: '', overdue: true };
  return [[late, ...halfOf(0, 1)], halfOf(WEEKS_IN_HALF, 0)];
}

function monthName(monday: string | undefined): string {
  return monday === undefined ? '' : (day(monday).split(' ')[1] ?? '').slice(0, 3);
}
