import type { CalculationProblem } from '../calculations/calculation.js';
import type { Day } from '../calendar/day.js';
import type { Duty } from '../gear/gear.js';
import type { HostingNeed } from '../hosting/hosting-need.js';
import type { Measure } from '../quantities/marking.js';
import type { SizeRule } from './method.js';
import type { SourceKey, Working } from '../working.js';

/** The least rating one item of a line must carry. `value` is exact decimal text in `unit` (kg for masses, N for forces, persons). */
export interface RatingNeed {
  readonly measure: Measure;
  readonly value: string;
  readonly unit: 'kg' | 'N' | 'persons';
}

export interface DimensionNeed {
  readonly dimension: string;
  readonly rule: SizeRule;
  /** Decimal text in the unit that the dimension's name ends in. */
  readonly value: string;
  readonly source: SourceKey;
}

/** One gear line of a job, ready to be met: how many of what, rated and sized how, with the arithmetic that says so. */
export interface GearLine {
  readonly key: string;
  readonly label: string;
  readonly kind: string;
  readonly duty: Duty;
  readonly quantity: number;
  readonly rating?: RatingNeed;
  readonly dimensions: readonly DimensionNeed[];
  /** What hangs on each of them, for a line of host machines. */
  readonly hosting?: HostingNeed;
  readonly workings: readonly Working[];
  /** What keeps the needs from being worked out; nothing is fit for the line until it is settled. */
  readonly unsettled?: readonly CalculationProblem[];
  /** Present when a person changed the line: what the method gave and why it was changed. */
  readonly adjusted?: { readonly reason: string; readonly methodQuantity: number };
}

/** The days gear is away, both included: from load-out day to back day. */
export interface Window {
  readonly from: Day;
  readonly to: Day;
}
