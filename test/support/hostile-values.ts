/** What a hostile or clumsy client puts where a field belongs. */
export const HOSTILE_VALUES: readonly unknown[] = [
  null,
  true,
  0,
  -1,
  0.5,
  501,
  2 ** 31,
  2 ** 53,
  1e308,
  '',
  '   ',
  'abc',
  'NaN',
  'Infinity',
  '-1',
  '1e308',
  '9'.repeat(30),
  '\u0000',
  'a\u0000b',
  '\ud800',
  '\u202eabc',
  '2026-02-30',
  '31/12/2026',
  "'; DROP TABLE item; --",
  'x'.repeat(20_000),
  [],
  [null],
  [['a'], 1],
  {},
  { toString: 1, valueOf: 1 },
  { constructor: 'x', hasOwnProperty: 1, length: 3 },
];

/** A copy of a JSON value with another one at a place in it. */
export function withValueAt(body: unknown, path: readonly (string | number)[], value: unknown): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  const inner: unknown = Reflect.get(Object(body) as object, step);
  const changed = withValueAt(inner, rest, value);
  if (Array.isArray(body)) return body.map((entry: unknown, index) => (index === step ? changed : entry));
  return { ...(Object(body) as object), [step]: changed };
}

/** Every place in a JSON value where another value can stand: each member, and each member of those. */
export function placesIn(body: unknown): (string | number)[][] {
  if (typeof body !== 'object' || body === null) return [];
  const entries: [string | number, unknown][] = Array.isArray(body)
    ? [...body.entries()]
    : Object.entries(body);
  return entries.flatMap(([step, inner]) => [[step], ...placesIn(inner).map((rest) => [step, ...rest])]);
}
