/** Everything that keeps the answers to a checklist from being judged. */
export const CHECK_PROBLEM_CODES = [
  'checklist_empty',
  'unknown_point',
  'answered_twice',
  'point_unanswered',
  'unknown_figure',
  'unit_not_of_figure',
  'figure_unreadable',
  'figure_negative',
  'figure_not_whole',
  'figure_out_of_range',
  'figure_zero',
  'partner_missing',
  'figures_doubtful',
] as const;
export type CheckProblemCode = (typeof CHECK_PROBLEM_CODES)[number];

/** One thing wrong with the answers. */
export interface CheckProblem {
  readonly code: CheckProblemCode;
  /** Key of the point; absent where the whole checklist is meant. */
  readonly point?: string;
  /** Name of the figure that is wrong, or of the one that is missing. */
  readonly figure?: string;
  /** The most that the figure may be, as decimal text in mm, degrees or a count. */
  readonly most?: string;
}
