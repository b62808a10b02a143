/** Everything that keeps a method and its adjustments from becoming gear lines, besides a faulty panel schedule. */
export const LINE_PROBLEM_CODES = [
  'count_out_of_range',
  'unknown_line',
  'line_adjusted_twice',
  'key_taken',
  'reason_missing',
  'quantity_out_of_range',
  'unknown_kind',
  'duty_not_of_kind',
  'rating_missing',
  'rating_not_of_kind',
  'rating_unreadable',
  'rating_below_method',
  'hitch_not_of_kind',
  'hitch_unknown',
  'hitch_angle_missing',
  'hitch_angle_out_of_range',
  'hitch_angle_not_of_mode',
  'hitch_too_few_slings',
  'unknown_dimension',
  'dimension_unreadable',
  'dimension_below_method',
  'unknown_parameter',
  'parameter_stated_twice',
  'parameter_unreadable',
  'parameter_not_whole',
  'parameter_out_of_range',
] as const;
export type LineProblemCode = (typeof LINE_PROBLEM_CODES)[number];

/** One thing wrong. `subject` is the key of the line or of the parameter, or the name of the count. */
export interface LineProblem {
  readonly code: LineProblemCode;
  readonly subject: string;
  /** The least that the method or the hitch allows, as decimal text in `unit`, where the code is about going below it. */
  readonly least?: string;
  /** The most that a parameter may be. */
  readonly most?: string;
  readonly unit?: string;
  /** The dimension concerned. */
  readonly dimension?: string;
}
