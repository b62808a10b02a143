import type { AllocationInput, Candidate } from './allocation.js';
import type { Cost } from './cost.js';
import { sortedNaturally } from './natural-order.js';

/** One item that may be used on one line, by the line's place in `OfferTable.lines`, at this cost. */
export interface Offer {
  readonly item: OfferedItem;
  readonly line: number;
  readonly cost: Cost;
}

/** An item with all its offers. */
export interface OfferedItem {
  readonly itemId: number;
  readonly tag: string;
  readonly offers: readonly Offer[];
}

/** The input in one order of its own, so that nothing depends on the order it was given in. */
export interface OfferTable {
  /** Lines in natural order of their keys. */
  readonly lines: readonly { readonly key: string; readonly quantity: number }[];
  /** Items in natural order of their tags: an item's place is its tag rank. */
  readonly items: readonly OfferedItem[];
}

/**
 * Sorts checked input and turns options into offers.
 * @throws RangeError for an option for a line that is not there.
 */
export function tabulate(input: AllocationInput): OfferTable {
  const lines = sortedNaturally(input.lines, ({ key }) => key);
  const lineNumbers = new Map(lines.map(({ key }, line) => [key, line]));
  const candidates = sortedNaturally(input.candidates, ({ tag }) => tag);
  return { lines, items: candidates.map((candidate, tagRank) => offered(candidate, tagRank, lineNumbers)) };
}

function offered(
  candidate: Candidate,
  tagRank: number,
  lineNumbers: ReadonlyMap<string, number>,
): OfferedItem {
  const offers: Offer[] = [];
  const item: OfferedItem = { itemId: candidate.itemId, tag: candidate.tag, offers };
  for (const { lineKey, transport, overRatingPermille, daysToSpare } of candidate.options) {
    const line = lineNumbers.get(lineKey);
    if (line === undefined)
      throw new RangeError(`'${candidate.tag}' is offered for '${lineKey}', which is no line`);
    offers.push({ item, line, cost: { transport, overRatingPermille, daysToSpare, tagRank } });
  }
  return item;
}
