import type { Day } from '../calendar/day.js';
import type { Gear, InspectionType } from '../gear/gear.js';
import { requirementsInForce } from './in-force.js';
import type { SchemeDefinition, Trigger } from './scheme.js';

/** The months between inspections that hold for one item, and whether a written scheme was set aside. */
export interface Interval {
  /** Absent when neither the scheme nor the item's own names one. */
  readonly months?: number;
  /** True when the months are the item's own and not the scheme's. */
  readonly byWrittenScheme: boolean;
  /** True when a longer interval was ignored for want of a reference, or one that is no whole number of months. */
  readonly ignoredWrittenScheme: boolean;
}

/**
 * The months that hold: the scheme's, shortened freely by the item's own written scheme, lengthened by it only with
 * a reference to what a competent person drew up. Of several written for one type the shortest counts.
 */
export function intervalFor(gear: Gear, type: InspectionType, triggers: readonly Trigger[]): Interval {
  const asked = shortest(
    triggers.flatMap((trigger) => (trigger.when === 'interval' ? [trigger.months] : [])),
  );
  const written = gear.writtenSchemes.filter((scheme) => scheme.type === type);
  const accepted = written.filter(
    ({ months, reference }) =>
      Number.isInteger(months) &&
      months > 0 &&
      (asked === undefined || months <= asked || (reference ?? '').trim() !== ''),
  );
  const own = shortest(accepted.map(({ months }) => months));
  const months = own ?? asked;
  return {
    ...(months === undefined ? {} : { months }),
    byWrittenScheme: own !== undefined && own !== asked,
    ignoredWrittenScheme: accepted.length < written.length,
  };
}

function shortest(months: readonly number[]): number | undefined {
  return months.length === 0 ? undefined : Math.min(...months);
}

/** Months that an inspection of each type lasts for the item, by what the scheme asks on `today`: the shortest where it asks twice. */
export function intervalMonths(
  gear: Gear,
  scheme: SchemeDefinition,
  today: Day,
): Readonly<Partial<Record<InspectionType, number>>> {
  const lasts: Partial<Record<InspectionType, number>> = {};
  for (const { requirement, triggers } of requirementsInForce(scheme, gear.kind, today)) {
    const { months } = intervalFor(gear, requirement.type, triggers);
    if (months !== undefined) lasts[requirement.type] = Math.min(months, lasts[requirement.type] ?? months);
  }
  return lasts;
}
