import { compareCosts, type Cost, NO_COST, plus } from './cost.js';
import type { Offer } from './offers.js';
import type { Residual, Takeover } from './residual.js';

/** A way to serve one more unit: takeovers from an open line onwards, and the free item the last line gets. */
export interface AugmentingPath {
  readonly takeovers: readonly Takeover[];
  readonly last: Offer;
}

interface Reached {
  readonly cost: Cost;
  /** The last step of the way here; undefined at an open line, where ways begin. */
  readonly by: Takeover | undefined;
}

/**
 * The cheapest way to serve one more unit, or undefined when no way is left. Bellman-Ford over the lines, as a
 * takeover may cost less than nothing. The allocation so far is a cheapest one for its size, so no round of takeovers
 * costs less than nothing and the search settles within as many rounds as there are lines.
 */
export function cheapestPath(residual: Residual): AugmentingPath | undefined {
  const reached = reachLines(residual);
  let best: { readonly cost: Cost; readonly last: Offer } | undefined;
  for (const [line, way] of reached.entries()) {
    const last = residual.cheapestFree(line);
    if (!way || !last) continue;
    const cost = plus(way.cost, last.cost);
    if (!best || compareCosts(cost, best.cost) < 0) best = { cost, last };
  }
  return best && { takeovers: takeoversTo(best.last.line, reached), last: best.last };
}

/** The cheapest way from any open line to each line that can be reached. */
function reachLines(residual: Residual): readonly (Reached | undefined)[] {
  const reached: (Reached | undefined)[] = [];
  for (let line = 0; line < residual.lineCount; line += 1) {
    reached.push(residual.openUnits(line) > 0 ? { cost: NO_COST, by: undefined } : undefined);
  }
  const takeovers = residual.takeovers();
  for (let improved = true; improved;) {
    improved = false;
    for (const takeover of takeovers) improved = improve(reached, takeover) || improved;
  }
  return reached;
}

function improve(reached: (Reached | undefined)[], takeover: Takeover): boolean {
  const start = reached[takeover.from];
  if (!start) return false;
  const cost = plus(start.cost, takeover.change);
  const known = reached[takeover.to];
  if (known && compareCosts(cost, known.cost) >= 0) return false;
  reached[takeover.to] = { cost, by: takeover };
  return true;
}

function takeoversTo(line: number, reached: readonly (Reached | undefined)[]): readonly Takeover[] {
  const backwards: Takeover[] = [];
  for (let step = reached[line]?.by; step; step = reached[step.from]?.by) backwards.push(step);
  return backwards.reverse();
}
