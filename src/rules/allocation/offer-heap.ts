import { compareCosts } from './cost.js';
import type { Offer } from './offers.js';

/**
 * A binary heap of the offers for one line, cheapest on top. Building it takes time in proportion to the offers, and
 * only the few that are looked at are ever sorted: a line of ten units does not pay for ordering a whole store.
 */
export class OfferHeap {
  private readonly offers: Offer[];

  constructor(offers: readonly Offer[]) {
    this.offers = [...offers];
    for (let place = (this.offers.length >> 1) - 1; place >= 0; place -= 1) this.sink(place);
  }

  /** The cheapest offer left, or undefined when there is none. */
  top(): Offer | undefined {
    return this.offers[0];
  }

  /** Takes the cheapest offer out. */
  removeTop(): void {
    const last = this.offers.pop();
    if (last === undefined || this.offers.length === 0) return;
    this.offers[0] = last;
    this.sink(0);
  }

  /** Lets the offer at `place` change places with its cheaper child until neither child is cheaper. */
  private sink(place: number): void {
    const sinking = this.offers[place];
    if (sinking === undefined) return;
    let hole = place;
    for (;;) {
      const child = this.cheaperChild(hole);
      const offer = this.offers[child];
      if (offer === undefined || compareCosts(offer.cost, sinking.cost) >= 0) break;
      this.offers[hole] = offer;
      hole = child;
    }
    this.offers[hole] = sinking;
  }

  private cheaperChild(parent: number): number {
    const first = 2 * parent + 1;
    const [left, right] = [this.offers[first], this.offers[first + 1]];
    return left && right && compareCosts(right.cost, left.cost) < 0 ? first + 1 : first;
  }
}
