import { addMonths, type Day } from '../calendar/day.js';
import type { Gear } from '../gear/gear.js';
import type { Trigger } from './scheme.js';

/** Gear that has lain idle for so long that it is inspected before it is used again. */
export interface IdleInspection {
  /** The last day that it was out on a job or inspected. */
  readonly since: Day;
  /** The months after which the rule calls it idle. */
  readonly months: number;
}

/**
 * Whether an item has lain idle for the months that a trigger names, counted from the last day it was out or inspected;
 * undefined where no trigger asks, or neither day is known. It is a caution and refuses nothing: gear may have been
 * used without going out, and the check before use looks at it in any case.
 */
export function idleInspection(
  { lastAwayOn }: Pick<Gear, 'lastAwayOn'>,
  triggers: readonly Trigger[],
  { lastDoneOn, today }: { lastDoneOn: Day | undefined; today: Day },
): IdleInspection | undefined {
  const limits = triggers.flatMap((trigger) => (trigger.when === 'afterIdle' ? [trigger.months] : []));
  const since = [lastAwayOn, lastDoneOn]
    .filter((day) => day !== undefined)
    .sort()
    .at(-1);
  if (limits.length === 0 || since === undefined) return undefined;
  const months = Math.min(...limits);
  return addMonths(since, months) <= today ? { since, months } : undefined;
}
