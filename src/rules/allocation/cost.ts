/**
 * What one item costs on one line, or a sum or difference of such costs. The four figures are weighed strictly one
 * after another: no amount of a later one makes up for one unit of an earlier one.
 */
export interface Cost {
  readonly transport: number;
  readonly overRatingPermille: number;
  readonly daysToSpare: number;
  readonly tagRank: number;
}

export const NO_COST: Cost = { transport: 0, overRatingPermille: 0, daysToSpare: 0, tagRank: 0 };

/**
 * The largest figure an option may carry. A sum of nine million of them still is a whole number that a double holds
 * exactly, so costs are compared as they are and never rounded.
 */
export const LARGEST_FIGURE = 1_000_000_000;

/** The sum, figure by figure. */
export function plus(left: Cost, right: Cost): Cost {
  return {
    transport: left.transport + right.transport,
    overRatingPermille: left.overRatingPermille + right.overRatingPermille,
    daysToSpare: left.daysToSpare + right.daysToSpare,
    tagRank: left.tagRank + right.tagRank,
  };
}

/** The difference, figure by figure; figures may come out negative. */
export function minus(left: Cost, right: Cost): Cost {
  return {
    transport: left.transport - right.transport,
    overRatingPermille: left.overRatingPermille - right.overRatingPermille,
    daysToSpare: left.daysToSpare - right.daysToSpare,
    tagRank: left.tagRank - right.tagRank,
  };
}

/** Negative, zero or positive as `left` is cheaper than, as cheap as or dearer than `right`: the first figure that differs decides. */
export function compareCosts(left: Cost, right: Cost): number {
  return (
    left.transport - right.transport ||
    left.overRatingPermille - right.overRatingPermille ||
    left.daysToSpare - right.daysToSpare ||
    left.tagRank - right.tagRank
  );
}
