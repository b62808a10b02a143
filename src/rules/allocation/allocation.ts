/** So many items wanted on one gear line. */
export interface LineDemand {
  readonly key: string;
  readonly quantity: number;
}

/** What it takes to use an item on one line it is fit for. All figures are whole numbers from 0 to `LARGEST_FIGURE`. */
export interface FitOption {
  readonly lineKey: string;
  /** 0 at the store the job loads from, otherwise more: 1, or the distance in km. */
  readonly transport: number;
  /** How far the rating lies above the need, in thousandths of the need. */
  readonly overRatingPermille: number;
  /** Days from the end of the window to the day the item falls due. Cap it, and give the cap when nothing falls due. */
  readonly daysToSpare: number;
}

/** An item with the lines it is fit for. A refused pair has no option here and is never used. */
export interface Candidate {
  readonly itemId: number;
  readonly tag: string;
  readonly options: readonly FitOption[];
}

/** A person's wish to use this item on this line. */
export interface Pin {
  readonly itemId: number;
  readonly lineKey: string;
}

export interface AllocationInput {
  readonly lines: readonly LineDemand[];
  readonly candidates: readonly Candidate[];
  readonly pins: readonly Pin[];
}

/** One item put on one line. */
export interface Chosen {
  readonly lineKey: string;
  readonly itemId: number;
  readonly tag: string;
}

/** A line that stays short by `missing` units (1 or more). */
export interface Shortfall {
  readonly lineKey: string;
  readonly missing: number;
}

/**
 * Why a pin was not honoured: the job has no such line, the item is not fit for it (or not a candidate at all),
 * earlier pins fill the line already, or the item is held by a pin on another line.
 */
export type UnmetPinReason = 'unknown_line' | 'not_fit_for_line' | 'line_full' | 'pinned_to_another_line';

export interface UnmetPin extends Pin {
  readonly reason: UnmetPinReason;
}

/** The whole answer's cost, each figure a sum over the chosen items, in order of weight. */
export interface AllocationCost {
  /** Units not covered. */
  readonly shortfall: number;
  readonly transport: number;
  readonly overRatingPermille: number;
  readonly daysToSpare: number;
  /** Sum of the places in natural tag order, the first candidate's being 0. */
  readonly tagRank: number;
}

export interface Allocation {
  /** In the order of the lines given, then in natural tag order. */
  readonly chosen: readonly Chosen[];
  /** Only the lines that are short, in the order given. */
  readonly shortfalls: readonly Shortfall[];
  readonly cost: AllocationCost;
  readonly unmetPins: readonly UnmetPin[];
}
