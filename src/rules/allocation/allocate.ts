import type { Allocation, AllocationCost, AllocationInput, Chosen, Shortfall } from './allocation.js';
import { checkInput } from './check-input.js';
import { NO_COST, plus } from './cost.js';
import { type Offer, tabulate } from './offers.js';
import { holdPins } from './pins.js';
import { Residual } from './residual.js';
import { cheapestPath } from './shortest-path.js';

/**
 * Puts items on the lines of one job in the best way there is: fewest units short, then least transport, then least
 * rating beyond the need, then fewest days to spare (what falls due soonest goes first), then lowest tags. Each is a
 * sum over the whole job and decides only where all before it are equal. An item serves one line at most. Pins are
 * honoured first, whatever they cost; the best is then found for the rest. The order of the input does not matter.
 *
 * Method: minimum-cost flow by successive shortest paths. A unit flows from a line to an item. Each step adds one unit
 * by the cheapest path from a line that is still open: the line takes a free item, or takes over one from another line,
 * which again takes a free item or takes over, and so on.
 *
 * Why it is the best answer: a flow is cheapest for its size exactly if no cycle of its residual graph costs less than
 * nothing. The empty flow has no such cycle, as no option costs less than nothing, and adding a unit along a shortest
 * path never makes one. So each flow on the way is cheapest for its size, and the last one, where no path is left, is
 * of the largest size (Ford and Fulkerson): fewest units short, then cheapest. The proof only adds and compares costs.
 * Tuples of whole numbers compared figure by figure allow both without rounding, so no weights are needed.
 *
 * Time for L lines, N candidates and U units served: O(N log N) for the tag order, O(L N) for the heaps, and for each
 * unit O(L^3) for the path, O(U L) for the takeovers and O(L log N) for each offer that is no longer free.
 * @throws RangeError for a line, item, tag or option given twice, an option for an unknown line, a quantity that is not
 * a whole number from 0, or a figure that is not a whole number from 0 to `LARGEST_FIGURE`.
 */
export function allocate(input: AllocationInput): Allocation {
  checkInput(input);
  const table = tabulate(input);
  const pinned = holdPins(table, input.pins);
  const residual = new Residual(table, pinned.held);
  for (let path = cheapestPath(residual); path; path = cheapestPath(residual)) {
    residual.apply(path.takeovers, path.last);
  }
  const used = residual.inUse();
  const keys = table.lines.map(({ key }) => key);
  const chosen = inLineOrder(input, keys, used);
  const shortfalls = missingUnits(input, chosen);
  return { chosen, shortfalls, cost: totalCost(used, shortfalls), unmetPins: pinned.unmet };
}

function inLineOrder(
  input: AllocationInput,
  keys: readonly string[],
  used: readonly Offer[],
): readonly Chosen[] {
  const byLine = new Map<string, Offer[]>(input.lines.map(({ key }) => [key, []]));
  for (const offer of used) byLine.get(keys[offer.line] ?? '')?.push(offer);
  return [...byLine].flatMap(([lineKey, offers]) =>
    offers
      .sort((left, right) => left.cost.tagRank - right.cost.tagRank)
      .map(({ item }) => ({ lineKey, itemId: item.itemId, tag: item.tag })),
  );
}

function missingUnits(input: AllocationInput, chosen: readonly Chosen[]): readonly Shortfall[] {
  const served = new Map<string, number>();
  for (const { lineKey } of chosen) served.set(lineKey, (served.get(lineKey) ?? 0) + 1);
  return input.lines
    .map(({ key, quantity }) => ({ lineKey: key, missing: quantity - (served.get(key) ?? 0) }))
    .filter(({ missing }) => missing > 0);
}

function totalCost(used: readonly Offer[], shortfalls: readonly Shortfall[]): AllocationCost {
  const shortfall = shortfalls.reduce((sum, { missing }) => sum + missing, 0);
  return { shortfall, ...used.reduce((sum, { cost }) => plus(sum, cost), NO_COST) };
}
