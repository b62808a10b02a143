import type { Exact } from '../quantities/exact.js';
import type { Working } from '../working.js';

/** Everything that keeps a calculation of a lift from coming to a figure. The codes are API. */
export const CALCULATION_PROBLEM_CODES = [
  'parameter_missing',
  'parameter_out_of_range',
  'leg_too_short',
  'leg_too_flat',
  'centre_outside_supports',
  'spacing_longer_than_panel',
  'supports_too_close',
  'overhang_too_long',
  'floor_point_overloaded',
  'truck_time_unreadable',
  'truck_outside_working_hours',
  'truck_not_needed',
  'load_longer_than_day',
  'work_never_ends',
] as const;
export type CalculationProblemCode = (typeof CALCULATION_PROBLEM_CODES)[number];

/** One thing in the way, as data: a view makes the sentence. Figures are exact decimal text in `unit`. */
export interface CalculationProblem {
  readonly code: CalculationProblemCode;
  /** The parameter, the panel or the truck concerned. */
  readonly subject?: string;
  readonly needed?: string;
  readonly has?: string;
  readonly unit?: string;
}

/** What a calculation comes to: its figures with their workings, or every problem. */
export type Calculated<Figures> =
  | { readonly ok: true; readonly figures: Figures; readonly workings: readonly Working[] }
  | { readonly ok: false; readonly problems: readonly CalculationProblem[] };

/** One panel of the schedule as the calculations see it: exact, in SI, weighed once. */
export interface LiftedPanel {
  readonly name: string;
  readonly heightM: Exact;
  readonly widthM: Exact;
  readonly thicknessM: Exact;
  /** Bare, and with its packing. */
  readonly massKg: Exact;
  readonly packedKg: Exact;
  /** How far the centre of gravity lies from the middle of the height, either way; nought where it is in the middle. */
  readonly centreOffsetM: Exact;
  readonly count: number;
}
