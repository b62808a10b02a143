import type { Day } from '../calendar/day.js';
import type { DayLifts, Gear } from '../gear/gear.js';
import type { SourceKey, Working } from '../working.js';
import type { Trigger } from './scheme.js';

/** How many of the lifts that are allowed between two inspections an item has made. */
export interface LiftsUsed {
  /** Lifts counted since the last inspection passed, or ever where there is none. */
  readonly counted: number;
  /** With so many made, the inspection is due before the next lift. */
  readonly allowed: number;
  /** The day on which the last lift allowed was made; absent while some are left. */
  readonly usedUpOn?: Day;
  readonly working: Working;
}

/**
 * The lifts of an item since it last passed, against the fewest that a trigger allows; undefined where none counts
 * lifts. Those of the day of the inspection count too: in doubt they came after it.
 */
export function liftsUsed(
  gear: Gear,
  {
    triggers,
    source,
  }: { readonly triggers: readonly Trigger[]; readonly source: { readonly key: SourceKey } },
  since: Day | undefined,
): LiftsUsed | undefined {
  const limits = triggers.flatMap((trigger) => (trigger.when === 'everyLifts' ? [trigger.lifts] : []));
  if (limits.length === 0) return undefined;
  const allowed = Math.min(...limits);
  const days = (gear.lifts ?? []).filter(({ on }) => since === undefined || on >= since);
  const counted = days.reduce((sum, { lifts }) => sum + lifts, 0);
  const usedUpOn = dayOfLift(allowed, days);
  const working: Working = {
    title: 'Lifts left before the next inspection',
    formula: 'allowed − counted, and no less than 0',
    inputs: [
      ...(since === undefined ? [] : [{ name: 'counted from', value: since, unit: '' }]),
      { name: 'allowed', value: String(allowed), unit: 'lifts' },
      { name: 'counted', value: String(counted), unit: 'lifts' },
    ],
    result: { name: 'left', value: String(Math.max(0, allowed - counted)), unit: 'lifts' },
    source: source.key,
    caution: 'Every lift of a job day counts for each item that was out on the job, used or not.',
  };
  return { counted, allowed, working, ...(usedUpOn === undefined ? {} : { usedUpOn }) };
}

/** The day on which the lift of that number was made, or undefined before it. */
function dayOfLift(number: number, days: readonly DayLifts[]): Day | undefined {
  let made = 0;
  for (const { on, lifts } of [...days].sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0))) {
    made += lifts;
    if (made >= number) return on;
  }
  return undefined;
}
