import type { Day } from '../calendar/day.js';
import { dueDates, type DueCaution, type DueReport } from '../due/due-date.js';
import type { SchemeDefinition } from '../due/scheme.js';
import type { Gear } from '../gear/gear.js';
import type { KindDefinition } from '../gear/kind.js';
import type { GearLine, Window } from '../lines/need.js';
import type { Exact } from '../quantities/exact.js';
import type { Working } from '../working.js';
import { conditionRefusals, identityRefusals } from './condition.js';
import { custodyRefusals } from './custody.js';
import { dateRefusals } from './dates.js';
import { dimensionRefusals } from './dimensions.js';
import { dutyRefusals } from './duty.js';
import { hireRefusals, hosted } from './hosting.js';
import { needRefusals } from './need.js';
import { rate } from './rating.js';
import { inOrder, type Refusal } from './refusal.js';
import { serviceLifeRefusals } from './service-life.js';

/** What the answer depends on besides the item and the line. */
export interface FitnessContext {
  /** The definition of the item's own kind. */
  readonly kind: KindDefinition;
  readonly scheme: SchemeDefinition;
  /** The days the gear is away. */
  readonly window: Window;
  readonly today: Day;
  /** The job that asks: its own commitment is no obstacle. */
  readonly forJobId?: number;
  /** The store that gear must come from; absent when any will do. */
  readonly homeStoreOnly?: number;
  /** What `dueDates` says of this very item by this scheme today; worked out when left out. It is the same for every line. */
  readonly report?: DueReport;
}

/** The answer at every gate. */
export interface Verdict {
  readonly fit: boolean;
  /** Every reason, in the order of `REFUSAL_CODES`. Empty when fit. */
  readonly refusals: readonly Refusal[];
  readonly cautions: readonly DueCaution[];
  readonly workings: readonly Working[];
  /** The last day the item is in date, by the earliest of its dates. */
  readonly dueOn?: Day;
  /** Rating over need, rounded down to three places; absent when either is missing or they do not compare. */
  readonly ratingRatio?: Exact;
}

/**
 * Whether this item is fit for this line on these days, with every reason why not. Fresh data in, no state kept:
 * planning, reserving, handing out and each day away ask the same question.
 * @throws RangeError when the window ends before it begins, or a need is not decimal text.
 */
export function fitness(gear: Gear, line: GearLine, context: FitnessContext): Verdict {
  const { kind, scheme, window, today, forJobId, homeStoreOnly } = context;
  if (window.to < window.from) throw new RangeError(`the window ends ${window.to}, before it begins`);
  const report = context.report ?? dueDates(gear, scheme, today);
  const rating = rate(gear, line, kind);
  const hosting = hosted(gear, line);
  const neededThrough = window.to > today ? window.to : today;
  const refusals = inOrder([
    ...conditionRefusals(gear, neededThrough),
    ...dutyRefusals(gear, line, kind),
    ...needRefusals(line),
    ...rating.refusals,
    ...dimensionRefusals(gear, line),
    ...hosting.refusals,
    ...dateRefusals(gear, report, { today, neededThrough }),
    ...serviceLifeRefusals(gear, kind, { today, neededThrough }),
    ...identityRefusals(gear),
    ...hireRefusals(gear, { from: window.from, through: neededThrough }),
    ...custodyRefusals(gear, window, { forJobId, homeStoreOnly }),
  ]);
  const dueWorkings = report.inspections.flatMap(({ workings }) => workings);
  return {
    fit: refusals.length === 0,
    refusals,
    cautions: report.cautions,
    workings: [...rating.workings, ...hosting.workings, ...dueWorkings],
    ...(report.dueOn === undefined ? {} : { dueOn: report.dueOn }),
    ...(rating.ratio === undefined ? {} : { ratingRatio: rating.ratio }),
  };
}
