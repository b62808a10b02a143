import type { Day } from '../calendar/day.js';
import type { Refusal } from '../fitness/refusal.js';
import type { InspectionType } from '../gear/gear.js';
import type { RatingNeed, Window } from '../lines/need.js';
import type { Shortfall } from './allocation.js';

/** A gear line as far as remedies ask: `GearLine` is one. */
export interface RemediedLine {
  readonly key: string;
  readonly rating?: RatingNeed;
}

/** An item with every reason why it was refused, line by line. */
export interface RefusedCandidate {
  readonly itemId: number;
  readonly tag: string;
  readonly storeId: number;
  readonly storeName: string;
  readonly lines: readonly { readonly lineKey: string; readonly refusals: readonly Refusal[] }[];
  /**
   * Months an inspection of a type lasts for this item. With it, an item is not offered for an examination that would
   * run out before the gear is back; without it, that is left to the next verdict.
   */
  readonly intervalMonths?: Readonly<Partial<Record<InspectionType, number>>>;
}

export interface RemedyInput {
  /** In the order in which lines may claim items. */
  readonly lines: readonly RemediedLine[];
  readonly shortfalls: readonly Shortfall[];
  readonly refused: readonly RefusedCandidate[];
  /** Items that serve a line of the job already: they remedy nothing. */
  readonly chosen: readonly { readonly itemId: number }[];
  readonly window: Window;
  readonly today: Day;
}

export interface Store {
  readonly id: number;
  readonly name: string;
}

export interface RemedyItem {
  readonly itemId: number;
  readonly tag: string;
}

export interface ExamineItem extends RemedyItem {
  /** The inspections the item needs, in the order of `INSPECTION_TYPES`. */
  readonly types: readonly InspectionType[];
}

export interface ReturningItem extends RemedyItem {
  /** The last day of the promises that hold the item. */
  readonly backOn: Day;
  /** The first day it could be loaded out: after it is back, and not before the job's own load-out day. */
  readonly loadOutFrom: Day;
}

interface RemedyOf<Kind extends string, Item extends RemedyItem> {
  readonly kind: Kind;
  readonly lineKey: string;
  readonly items: readonly Item[];
  /** Units of the line that this closes. */
  readonly covers: number;
}

/** Take back an exclusion that the storeman made. */
export type LiftExclusion = RemedyOf<'liftExclusion', RemedyItem>;

export interface MoveFromStore extends RemedyOf<'moveFromStore', RemedyItem> {
  readonly store: Store;
}

/** Have the items examined on or before the day `by`: the day before load-out, or today if that has passed. */
export interface Examine extends RemedyOf<'examine', ExamineItem> {
  readonly by: Day;
}

/** Load out no earlier than `loadOutFrom`, when the last of the items is back. */
export interface WaitForReturn extends RemedyOf<'waitForReturn', ReturningItem> {
  readonly loadOutFrom: Day;
}

/** Hire `covers` items rated at least `rating`; a line without a rating asks for none. */
export interface Hire extends RemedyOf<'hire', never> {
  readonly rating?: RatingNeed;
}

export type Remedy = LiftExclusion | MoveFromStore | Examine | WaitForReturn | Hire;

/** What closes the gap of one short line. */
export interface LineRemedies {
  readonly lineKey: string;
  readonly missing: number;
  /** Cheapest effort first; together they cover `missing`. */
  readonly remedies: readonly Remedy[];
  /** Hiring every missing unit instead: given when the own items close the gap in part only. */
  readonly wholeHire?: Hire;
}
