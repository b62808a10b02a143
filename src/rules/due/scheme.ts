import type { Day } from '../calendar/day.js';
import type { Citation } from '../citation.js';
import type { EventType, InspectionType } from '../gear/gear.js';

/** What makes an inspection due. The earliest date that any trigger gives is the due date. */
export type Trigger =
  /** Due this many calendar months after the last one, clamped to the month's end. */
  | { readonly when: 'interval'; readonly months: number }
  /** Due before first use by the owner, unless new with a maker's declaration no older than `declarationMonths` (absent: no exception). */
  | { readonly when: 'firstUse'; readonly declarationMonths?: number }
  /** Due again before use after any of these events. */
  | { readonly when: 'afterEvent'; readonly events: readonly EventType[] }
  /** Due again before use when so many lifts were made since the last one passed. */
  | { readonly when: 'everyLifts'; readonly lifts: number }
  /** To be inspected before use after so many calendar months in which it was neither out nor inspected: a caution. */
  | { readonly when: 'afterIdle'; readonly months: number }
  /** Due each shift before use: answered at hand-out and on the phone page, never a date in the diary. */
  | { readonly when: 'eachShift' };

/** The value in force from a day on. `triggers: null` records that the requirement was withdrawn on that day. */
export interface DatedTriggers {
  readonly validFrom: Day;
  readonly triggers: readonly Trigger[] | null;
  readonly source: Citation;
  readonly checkedOn: Day;
}

/** One inspection that a place asks of some kinds. */
export interface InspectionRequirement {
  /** Stable id such as `gb.lifting-accessory.thorough-examination`. */
  readonly id: string;
  readonly kinds: readonly string[];
  readonly type: InspectionType;
  readonly who: 'user' | 'inspector' | 'competentPerson';
  /** Whether proof of it (report or certificate) must be on file before the item goes out. */
  readonly certificateRequired: boolean;
  /** Sorted by `validFrom`, oldest first. */
  readonly entries: readonly DatedTriggers[];
}

/** The rules of one place as `config/schemes/*.yaml` defines them. */
export interface SchemeDefinition {
  readonly scheme: string;
  readonly name: string;
  readonly caution: string;
  readonly inspections: readonly InspectionRequirement[];
}
