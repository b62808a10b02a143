import type { Citation } from '../citation.js';
import type { FigureKey, LiftFigure } from '../calculations/lift-figure.js';
import type { CalculationKey, MethodParameter } from '../calculations/parameter.js';
import type { Duty } from '../gear/gear.js';

/** What a quantity of a gear line is counted by. */
export const COUNTED_BY = [
  'crew',
  'lifterInUse',
  'panelOnWheels',
  'truckUnloading',
  'personAloft',
  'job',
] as const;
export type CountedBy = (typeof COUNTED_BY)[number];

/** What one item of a line must be rated for: a figure of the lift, the persons aloft in one crew, or nothing. */
export type RatingBasis = LiftFigure | 'personsPerCrew' | 'none';

/** One kind of gear that a method asks for. */
export interface MethodLine {
  /** Stable key within the method, such as `strapsUnderBottomRail`. */
  readonly key: string;
  readonly label: string;
  readonly kind: string;
  readonly duty: Duty;
  readonly per: CountedBy;
  readonly quantityPer: number;
  /** Added once for the whole job, unless the line comes to nothing without them. */
  readonly spares: number;
  readonly ratingBasis: RatingBasis;
  /** Sizes that each item must have. */
  readonly fits: readonly FitRequirement[];
  /** What the line's arithmetic leaves out; shown with its working. */
  readonly caution?: string;
  /** True for the machine that the lifter hangs on: its load chart is asked as well. */
  readonly hosting?: true;
  readonly source: Citation;
}

/** How a size is held against what is needed. */
export const SIZE_RULES = ['atLeast', 'atMost', 'equals'] as const;
export type SizeRule = (typeof SIZE_RULES)[number];

/** A size that each item of a line must have: by a value as decimal text in the dimension's own unit, or by a figure of the job. */
export type FitRequirement = {
  readonly dimension: string;
  readonly rule: SizeRule;
  readonly source: Citation;
} & ({ readonly value: string } | { readonly figure: FigureKey });

/** How an installation is done, as `config/methods/*.yaml` defines it. */
export interface MethodDefinition {
  readonly method: string;
  readonly name: string;
  readonly summary: string;
  /** Margin on a mass that is estimated from areal mass, as exact decimal text ('0.10' for ten per cent). A weighed mass has none. */
  readonly estimateMargin: { readonly value: string; readonly source: Citation };
  /** Counts that a job starts from for each crew, until its planner states them. */
  readonly perCrew: { readonly lifters: number; readonly personsAloft: number; readonly source: Citation };
  /** What is worked out for a job, besides the masses of its panels. */
  readonly calculations: readonly CalculationKey[];
  /** The figures that the calculations start from. */
  readonly parameters: readonly MethodParameter[];
  readonly lines: readonly MethodLine[];
  /** What the crew confirms with its own eyes before the gear goes out: no figure can vouch for it. */
  readonly confirmations: readonly { readonly text: string; readonly source: Citation }[];
  readonly cautions: readonly { readonly text: string; readonly source: Citation }[];
}
