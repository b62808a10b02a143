import type { Citation } from '../gear/kind.js';
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

/**
 * What one item of a line must be rated for, before its share is taken: the mass of the heaviest panel bare or packed,
 * the weight of the heaviest bare panel as a force, the persons aloft in one crew, or nothing.
 */
export const RATING_BASES = [
  'heaviestPanel',
  'heaviestPackedPanel',
  'panelWeightAsForce',
  'personsPerCrew',
  'none',
] as const;
export type RatingBasis = (typeof RATING_BASES)[number];

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
  /** Share of the basis that one item of the line must be rated for, as exact decimal text ('1', '0.5'). */
  readonly share: string;
  /** Dimensions each item must have: a least or greatest value, or a range that must hold the job's figure. */
  readonly fits: readonly FitRequirement[];
  /** What the line's arithmetic leaves out; shown with its working. */
  readonly caution?: string;
  readonly source: Citation;
}

export type FitRequirement =
  /** The item's dimension must be at least this. `value` is decimal text in the dimension's own unit. */
  | { readonly dimension: string; readonly atLeast: string; readonly source: Citation }
  /** The item's dimension must equal this. */
  | { readonly dimension: string; readonly equals: string; readonly source: Citation }
  /** The item's dimension must be at least the thickest panel, in mm. */
  | { readonly dimension: string; readonly atLeastPanelThickness: true; readonly source: Citation };

/** How an installation is done, as `config/methods/*.yaml` defines it. */
export interface MethodDefinition {
  readonly method: string;
  readonly name: string;
  readonly summary: string;
  /** Margin on a mass that is estimated from areal mass, as exact decimal text ('0.10' for ten per cent). A weighed mass has none. */
  readonly estimateMargin: { readonly value: string; readonly source: Citation };
  /** Counts that a job starts from for each crew, until its planner states them. */
  readonly perCrew: { readonly lifters: number; readonly personsAloft: number; readonly source: Citation };
  readonly lines: readonly MethodLine[];
  readonly cautions: readonly { readonly text: string; readonly source: Citation }[];
}
