import type { Exact } from '../quantities/exact.js';

/**
 * The entry of the greatest size; of equals the first.
 * @throws RangeError when there is none, which a checked schedule rules out.
 */
export function greatest<Entry>(entries: readonly Entry[], sizeOf: (entry: Entry) => Exact): Entry {
  const [first, ...others] = entries;
  if (first === undefined) throw new RangeError('a schedule without panels has no ruling one');
  return others.reduce((best, entry) => (sizeOf(best).isLessThan(sizeOf(entry)) ? entry : best), first);
}
