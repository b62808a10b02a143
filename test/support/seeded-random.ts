/** A source of repeatable chance: the same seed gives the same numbers on every machine. */
export interface SeededRandom {
  /** A whole number from `least` to `most`, both included. */
  whole(least: number, most: number): number;
  /** True so many times in a hundred. */
  percent(chance: number): boolean;
  /** One of the entries. */
  oneOf<T>(entries: readonly T[]): T;
  /** A copy in another order. */
  shuffled<T>(entries: readonly T[]): T[];
}

/** A 32-bit linear congruential generator (multiplier 1664525, increment 1013904223); its upper bits are used. */
export function seededRandom(seed: number): SeededRandom {
  let state = (seed * 2654435761) >>> 0;
  const fraction = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state >>> 8) / 2 ** 24;
  };
  const whole = (least: number, most: number): number => least + Math.floor(fraction() * (most - least + 1));
  const oneOf = <T>(entries: readonly T[]): T => {
    const entry = entries[whole(0, entries.length - 1)];
    if (entry === undefined) throw new RangeError('nothing to choose from');
    return entry;
  };
  const shuffled = <T>(entries: readonly T[]): T[] => {
    const keyed = entries.map((entry) => ({ entry, key: fraction() }));
    return keyed.sort((left, right) => left.key - right.key).map(({ entry }) => entry);
  };
  return { whole, percent: (chance) => whole(1, 100) <= chance, oneOf, shuffled };
}
