import type { CoverageView } from './coverage.dto.js';

/** The item to check next: the first one unchecked after the one given, round to the start; undefined when none is left. */
export function nextUnchecked({ lines }: Pick<CoverageView, 'lines'>, after?: number): number | undefined {
  const items = lines.flatMap((line) => line.items);
  const from = items.findIndex(({ itemId }) => itemId === after) + 1;
  return [...items.slice(from), ...items.slice(0, from)].find(
    ({ itemId, state }) => state === 'unchecked' && itemId !== after,
  )?.itemId;
}
