/**
 * Notes that `value` was given.
 * @throws RangeError when it was noted before.
 */
export function noteOnce<T extends string | number>(seen: Set<T>, value: T, what: string): void {
  if (seen.has(value)) throw new RangeError(`${what} '${value}' is given twice`);
  seen.add(value);
}
