import { earliest, type Day } from '../../rules/calendar/day.js';
import { dueDates, type DueReport } from '../../rules/due/due-date.js';
import type { SchemeDefinition } from '../../rules/due/scheme.js';
import type { Gear } from '../../rules/gear/gear.js';

/** When an item falls due, and the report that says so. */
export interface DueDay {
  readonly dueOn: Day;
  readonly report: DueReport;
}

/** What a due day is worked out by, besides the item. */
export interface DueContext {
  readonly scheme: SchemeDefinition;
  readonly today: Day;
  /** The day on which the item was entered in the register, at its store: asked for only where it matters. */
  readonly enteredOn: () => Day;
}

/**
 * The earliest day on which anything of the item falls due. Gear never examined is due since it was entered. Undefined
 * of an item that is not told of: out of service, missing, or with nothing that falls due.
 *
 * A day that was found once stays found as time goes by: else an index of these days would have to be made anew
 * every night.
 */
export function dueDayOf(gear: Gear, context: DueContext): DueDay | undefined {
  if (gear.condition !== 'inService' || gear.missing) return undefined;
  const report = dueDates(gear, context.scheme, context.today);
  const since = isNeverExamined(report) ? neverExaminedSince(gear, context) : undefined;
  const dueOn = earliest([report.dueOn, since].filter((day) => day !== undefined));
  return dueOn === undefined ? undefined : { dueOn, report };
}

/**
 * The day on which it was entered, or, where it was good on a maker's declaration then, the day on which that ended:
 * the declaration may have lapsed since.
 */
function neverExaminedSince(gear: Gear, context: DueContext): Day {
  const { scheme } = context;
  const enteredOn = context.enteredOn();
  const { declarationOn = enteredOn } = gear;
  const then = dueDates(gear, scheme, declarationOn > enteredOn ? declarationOn : enteredOn);
  return isNeverExamined(then) ? enteredOn : (then.dueOn ?? enteredOn);
}

function isNeverExamined({ inspections }: DueReport): boolean {
  return inspections.some(({ neverExamined }) => neverExamined);
}
