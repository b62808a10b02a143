import type { PlanInput } from '../planner/job-plan.js';
import { judge } from '../planner/judge-gear.js';
import { servedByLine } from '../planner/served-by-line.js';
import type { Refusal } from '../rules/fitness/refusal.js';
import { isLive, type BookedItem } from './booked-items.js';

/** A booked item that is not fit for its line any more, with every reason. */
export interface UnfitItem {
  readonly row: BookedItem;
  readonly lineLabel: string;
  readonly refusals: readonly Refusal[];
}

/** A line that lacks gear though the job has booked some. */
export interface ShortLine {
  readonly lineKey: string;
  readonly label: string;
  readonly missing: number;
}

/** What is wrong with a booking on a day. */
export interface BookingCheck {
  readonly unfit: readonly UnfitItem[];
  /** Reserved, but not needed any more. */
  readonly surplus: readonly BookedItem[];
  readonly shortLines: readonly ShortLine[];
}

/** The check of a booking that is as it should be. */
export const NOTHING_WRONG: BookingCheck = { unfit: [], surplus: [], shortLines: [] };

/**
 * Asks again of everything booked whether it is fit for its line as the line is now, and whether it is still needed.
 * A job with nothing reserved or out has nothing to flag. `gear` holds at least the items of the rows.
 */
export function checkBooking(input: PlanInput, rows: readonly BookedItem[]): BookingCheck {
  const live = rows.filter(isLive);
  if (live.length === 0) return NOTHING_WRONG;
  const served = servedByLine(input);
  const open = new Map(
    input.lines.map(({ key, quantity }) => [key, Math.max(0, quantity - (served.get(key) ?? 0))]),
  );
  return {
    unfit: live.flatMap((row) => unfitItem(row, input)),
    surplus: surplusOf(live, open),
    shortLines: input.lines.flatMap(({ key, label }) => {
      const missing = (open.get(key) ?? 0) - live.filter(({ lineKey }) => lineKey === key).length;
      return missing > 0 ? [{ lineKey: key, label, missing }] : [];
    }),
  };
}

/** How many things a check found. */
export function flagCount({ unfit, surplus, shortLines }: BookingCheck): number {
  return unfit.length + surplus.length + shortLines.length;
}

function unfitItem(row: BookedItem, input: PlanInput): UnfitItem[] {
  const line = input.lines.find(({ key }) => key === row.lineKey);
  const gear = input.gear.find(({ itemId }) => itemId === row.itemId);
  if (!line || !gear) return [];
  const { refusals } = judge(gear, line, input);
  return refusals.length === 0 ? [] : [{ row, lineLabel: line.label, refusals }];
}

/** The reserved items beyond what each line still needs, the last promised first to go. */
function surplusOf(live: readonly BookedItem[], open: ReadonlyMap<string, number>): BookedItem[] {
  const keys = [...new Set(live.map(({ lineKey }) => lineKey))];
  return keys.flatMap((key) => {
    const onLine = live.filter(({ lineKey }) => lineKey === key);
    const tooMany = onLine.length - (open.get(key) ?? 0);
    const reserved = onLine.filter(({ state }) => state === 'reserved');
    return tooMany > 0 ? reserved.slice(Math.max(0, reserved.length - tooMany)) : [];
  });
}
