/**
 * Orders text as people number things: runs of the digits 0 to 9 compare as whole numbers, all else by UTF-16 code
 * unit, so `SL-9` comes before `SL-10`. Texts that differ only in leading zeros fall back to plain order, so only
 * equal texts compare as 0. The same on every machine: no locale takes part.
 */
export function compareNaturally(left: string, right: string): number {
  return compareText(naturalKey(left), naturalKey(right)) || compareText(left, right);
}

/** A copy in natural order of the text that `textOf` reads from each entry; equal texts keep their order. */
export function sortedNaturally<T>(entries: readonly T[], textOf: (entry: T) => string): T[] {
  const keyed = entries.map((entry) => ({ entry, text: textOf(entry), key: naturalKey(textOf(entry)) }));
  keyed.sort((left, right) => compareText(left.key, right.key) || compareText(left.text, right.text));
  return keyed.map(({ entry }) => entry);
}

/**
 * Rewrites each run of digits as '0', the count of its digits (one code unit) and the digits themselves without
 * leading zeros. The leading '0' keeps numbers where digits stand in plain order; the count puts longer numbers last.
 */
function naturalKey(text: string): string {
  return text.replace(/[0-9]+/g, (run) => {
    const digits = run.replace(/^0+(?=.)/, '');
    return `0${String.fromCharCode(digits.length)}${digits}`;
  });
}

function compareText(left: string, right: string): number {
  return left < right ? -1 : left > right ? 1 : 0;
}
