import type { Day } from '../calendar/day.js';
import type { ExaminationOnRecord, Paragraph } from './report.js';

/**
 * Why a paragraph does not stand: nothing is said, it goes against another answer, it names no mark of the item, a
 * day lies where it cannot, or the register has a later one.
 */
export type GapCode =
  | 'missing'
  | 'contradiction'
  | 'names_another_item'
  | 'danger_called_safe'
  | 'unsafe_without_reason'
  | 'in_future'
  | 'before_manufacture'
  | 'before_last_examination'
  | 'later_on_record'
  | 'not_after_examination'
  | 'later_than_allowed';

/** One thing that keeps a draft from being a report: the paragraph, the field that would cure it, and why. */
export interface ReportGap {
  readonly paragraph: Paragraph;
  /** As the request names it, such as `defects[0].by`. */
  readonly field: string;
  readonly code: GapCode;
  /** For a day that is too late: the latest it may be. */
  readonly latest?: Day;
  /** For a last examination that the register knows better: what it has. */
  readonly onRecord?: ExaminationOnRecord;
}

/** A gap of a paragraph. */
export function gap(paragraph: Paragraph, field: string, code: GapCode): ReportGap {
  return { paragraph, field, code };
}

/** Whether a text says nothing. */
export function isBlank(text: string | undefined): boolean {
  return (text ?? '').trim() === '';
}
