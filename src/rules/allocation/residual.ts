import { compareCosts, type Cost, minus } from './cost.js';
import { OfferHeap } from './offer-heap.js';
import type { Offer, OfferedItem, OfferTable } from './offers.js';

/** Line `from` takes over an item that serves line `to` now; `to` then has to find another. */
export interface Takeover {
  readonly from: number;
  readonly to: number;
  /** The item's offer for line `from`. */
  readonly offer: Offer;
  /** Cost of the item on `from` less its cost on `to`: may be negative. */
  readonly change: Cost;
}

/**
 * What can still be changed about an allocation, reduced to the lines: for each line its cheapest free item, and for
 * each pair of lines the cheapest item to take over. All other edges of the residual graph run beside one of these at
 * no lower cost, so leaving them out changes no shortest path.
 */
export class Residual {
  private readonly free: readonly OfferHeap[];
  private readonly open: number[];
  private readonly serving = new Map<OfferedItem, Offer>();
  private readonly servedBy: readonly Set<Offer>[];
  /** By the line that gives: the cheapest takeover of each line that may take. */
  private readonly takeoversOf: (readonly Takeover[])[];

  /** Starts with the `held` offers in use for good: no line takes those over. */
  constructor(
    private readonly table: OfferTable,
    private readonly held: readonly Offer[],
  ) {
    this.open = table.lines.map(({ quantity }) => quantity);
    this.servedBy = table.lines.map(() => new Set<Offer>());
    this.takeoversOf = table.lines.map(() => []);
    for (const offer of held) {
      this.serving.set(offer.item, offer);
      this.changeOpen(offer.line, -1);
    }
    this.free = this.freeOffers();
  }

  get lineCount(): number {
    return this.table.lines.length;
  }

  /** Units still wanted on a line. */
  openUnits(line: number): number {
    return this.open[line] ?? 0;
  }

  /** The cheapest item for the line that serves no line yet. An item once in use never becomes free again. */
  cheapestFree(line: number): Offer | undefined {
    const heap = this.free[line];
    let top = heap?.top();
    while (heap && top && this.serving.has(top.item)) {
      heap.removeTop();
      top = heap.top();
    }
    return top;
  }

  /** The cheapest takeover for each pair of lines that has one, in line order. */
  takeovers(): readonly Takeover[] {
    return this.takeoversOf.flat();
  }

  /** Adds one unit: each takeover of the path happens, and the line at the path's end gets the free item `last`. */
  apply(path: readonly Takeover[], last: Offer): void {
    for (const { offer } of path) this.serve(offer);
    this.serve(last);
    this.changeOpen(path[0]?.from ?? last.line, -1);
    for (const line of new Set([...path.map(({ from }) => from), last.line])) {
      this.takeoversOf[line] = this.cheapestTakeovers(line);
    }
  }

  /** All offers in use, held ones included. */
  inUse(): readonly Offer[] {
    return [...this.held, ...this.servedBy.flatMap((offers) => [...offers])];
  }

  private changeOpen(line: number, by: number): void {
    this.open[line] = this.openUnits(line) + by;
  }

  private serve(offer: Offer): void {
    const before = this.serving.get(offer.item);
    if (before) this.servedBy[before.line]?.delete(before);
    this.serving.set(offer.item, offer);
    this.servedBy[offer.line]?.add(offer);
  }

  private cheapestTakeovers(to: number): readonly Takeover[] {
    const best: (Takeover | undefined)[] = this.table.lines.map(() => undefined);
    for (const current of this.servedBy[to] ?? []) {
      for (const offer of current.item.offers) {
        if (offer.line === to) continue;
        const change = minus(offer.cost, current.cost);
        const known = best[offer.line];
        if (known && !isBefore(change, offer, known)) continue;
        best[offer.line] = { from: offer.line, to, offer, change };
      }
    }
    return best.filter((takeover) => takeover !== undefined);
  }

  private freeOffers(): readonly OfferHeap[] {
    const byLine: Offer[][] = this.table.lines.map(() => []);
    for (const item of this.table.items) {
      for (const offer of item.offers) byLine[offer.line]?.push(offer);
    }
    return byLine.map((offers) => new OfferHeap(offers));
  }
}

/** Cheaper, or as cheap and earlier in tag order, so that the order of taking in never decides. */
function isBefore(change: Cost, offer: Offer, known: Takeover): boolean {
  return (compareCosts(change, known.change) || offer.cost.tagRank - known.offer.cost.tagRank) < 0;
}
