import type { Day } from '../calendar/day.js';
import type { SourceKey } from '../working.js';

/** Every reason an item can be refused for. The codes are API: they never change meaning and are never reused. */
export const REFUSAL_CODES = [
  'scrapped',
  'quarantined',
  'under_repair',
  'missing',
  'defect_deadline',
  'wrong_kind',
  'wrong_duty',
  'need_unsettled',
  'unrated',
  'rating_not_comparable',
  'under_rated',
  'unknown_size',
  'too_short',
  'does_not_fit_machine',
  'does_not_fit_panel',
  'no_load_chart',
  'outside_load_chart',
  'residual_capacity_too_low',
  'attachment_not_covered',
  'never_examined',
  'failed_examination',
  'out_of_date',
  'due_during_job',
  'examine_after_event',
  'lifts_used_up',
  'past_service_life',
  'service_life_ends_during_job',
  'service_life_unknown',
  'certificate_missing',
  'label_illegible',
  'serial_unknown',
  'no_rule_for_kind',
  'outside_hire',
  'promised_elsewhere',
  'not_back_yet',
  'at_another_store',
  'excluded_by_storeman',
] as const;
export type RefusalCode = (typeof REFUSAL_CODES)[number];

/** One reason, as data. A view makes the sentence; which of the figures are present depends on the code. */
export interface Refusal {
  readonly code: RefusalCode;
  /** What was needed and what the item has, as exact decimal text in `unit`. */
  readonly needed?: string;
  readonly has?: string;
  readonly unit?: string;
  /** The dimension, inspection type or end of a hire concerned. */
  readonly subject?: string;
  /** The day that decides: due date, back day of the other job, end of life or of a hire. */
  readonly on?: Day;
  readonly jobReference?: string;
  readonly source: SourceKey;
}

const PLACE_OF = new Map<RefusalCode, number>(REFUSAL_CODES.map((code, place) => [code, place]));

/** The refusals in the order of `REFUSAL_CODES`; those of one code keep their order. */
export function inOrder(refusals: readonly Refusal[]): readonly Refusal[] {
  if (refusals.length < 2) return refusals;
  const placeOf = ({ code }: Refusal): number => PLACE_OF.get(code) ?? REFUSAL_CODES.length;
  return [...refusals].sort((a, b) => placeOf(a) - placeOf(b));
}
