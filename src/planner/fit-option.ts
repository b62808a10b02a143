import type { FitOption } from '../rules/allocation/allocation.js';
import { daysBetween, type Day } from '../rules/calendar/day.js';
import type { Verdict } from '../rules/fitness/fitness.js';
import type { Gear } from '../rules/gear/gear.js';
import type { GearLine, Window } from '../rules/lines/need.js';
import { Exact } from '../rules/quantities/exact.js';

/** Ten years: later due days weigh no more, and gear that never falls due counts as this. */
const MOST_DAYS_TO_SPARE = 3_650;

/** Further over the need than anyone's gear is. */
const MOST_OVER_RATING_PERMILLE = 1_000_000;

/** Gives what it takes to use a fit item on a line: a journey from another store, rating beyond the need, days to spare. */
export type OptionOf = (
  gear: Pick<Gear, 'storeId'>,
  on: { line: Pick<GearLine, 'key'>; verdict: Verdict },
) => FitOption;

/** The options of one job. Many items share a due day, and each day is counted once. */
export function optionsFor(job: { readonly storeId: number; readonly window: Window }): OptionOf {
  const counted = new Map<Day, number>();
  const daysToSpare = (dueOn: Day | undefined): number => {
    if (dueOn === undefined) return MOST_DAYS_TO_SPARE;
    const days = counted.get(dueOn) ?? daysBetween(job.window.to, dueOn);
    counted.set(dueOn, days);
    return Math.min(Math.max(days, 0), MOST_DAYS_TO_SPARE);
  };
  return (gear, { line, verdict }) => ({
    lineKey: line.key,
    transport: gear.storeId === job.storeId ? 0 : 1,
    overRatingPermille: overRatingPermille(verdict.ratingRatio),
    daysToSpare: daysToSpare(verdict.dueOn),
  });
}

/** Rating beyond the need in thousandths of the need, rounded down. */
function overRatingPermille(ratio: Exact | undefined): number {
  if (ratio === undefined) return 0;
  const permille = ratio.minus(ONE).times(Exact.of(1000)).rounded({ places: 0, rounding: 'down' }).toNumber();
  return Math.min(Math.max(permille, 0), MOST_OVER_RATING_PERMILLE);
}

const ONE = Exact.of(1);
