import type { Day } from '../../rules/calendar/day.js';
import type { EventType, InspectionType } from '../../rules/gear/gear.js';

/** What makes an item due. */
export type DueReason =
  /** An inspection at the end of its interval, or at the day its examiner named. */
  | {
      readonly why: 'inspection';
      readonly type: InspectionType;
      readonly dueOn: Day;
      readonly source: string;
    }
  /** Never inspected: not to be used before it is. */
  | { readonly why: 'neverExamined'; readonly type: InspectionType; readonly source: string }
  /** Something happened to it, such as a drop. */
  | { readonly why: 'event'; readonly type: InspectionType; readonly event: EventType; readonly dueOn: Day }
  /** It has made the lifts that are allowed between inspections. */
  | { readonly why: 'liftsUsed'; readonly type: InspectionType; readonly dueOn: Day }
  /** A defect that is a danger from the day after. */
  | { readonly why: 'defectDeadline'; readonly dueOn: Day }
  /** It failed its last examination and no other has passed it since. */
  | { readonly why: 'failed'; readonly type: InspectionType; readonly dueOn: Day };

/** A job that an item is promised to or out on. */
export interface DiaryJob {
  readonly jobId: number;
  readonly reference: string;
  readonly from: Day;
  readonly to: Day;
  readonly out: boolean;
}

/** One item of the register that falls due, as the rules see it on its store's today. */
export interface DiaryEntry {
  readonly itemId: number;
  readonly tag: string;
  readonly kind: string;
  readonly storeId: number;
  readonly storeName: string;
  /** The store's today. */
  readonly today: Day;
  /** The earliest due day; of an item never examined, the day it was entered. In date through this day. */
  readonly dueOn: Day;
  /** True from the day after the due day, and at once of what may not be used before it is examined. */
  readonly overdue: boolean;
  readonly reasons: readonly DueReason[];
  /** Who may do what is due: the strictest of what its reasons ask. */
  readonly who: 'inspector' | 'competentPerson';
  /** Every job that it is promised to or out on, by first day. */
  readonly jobs: readonly DiaryJob[];
  /** Those of them that it would stop: they run past the due day, or it is overdue. */
  readonly stops: readonly DiaryJob[];
}
