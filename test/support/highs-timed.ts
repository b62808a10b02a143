import { createRequire } from 'node:module';
import type { AllocationInput } from '../../src/rules/allocation/allocation.js';

/** The package's types describe its CommonJS build only, so that is the build to load. */
const highsPackage: typeof import('highs') = createRequire(import.meta.url)('highs');
const solver = highsPackage.default();

/**
 * How long HiGHS takes for an instance, with building the model, and the shortfall it finds. The order of the aims is
 * folded into one weight: near enough for a time, not for checking an optimum. It is given the linear relaxation, which
 * flatters HiGHS: the constraints of an assignment are totally unimodular, so its vertices are whole all the same.
 */
export async function allocationSeconds(
  input: AllocationInput,
  limitSeconds: number,
): Promise<{ ms: number; finished: boolean; shortfall: number }> {
  const highs = await solver;
  const start = performance.now();
  const pairs = input.candidates.flatMap(({ itemId, options }) =>
    options.map((option) => ({ itemId, ...option })),
  );
  const cost = ({ transport, overRatingPermille, daysToSpare }: (typeof pairs)[number]) =>
    1e7 - transport * 1e4 - overRatingPermille - daysToSpare * 1e-3;
  const rows = [
    ...sumsBy(pairs, ({ itemId }) => itemId).map(([, terms]) => `${terms} <= 1`),
    ...sumsBy(pairs, ({ lineKey }) => lineKey).map(
      ([line, terms]) => `${terms} <= ${quantityOf(input, line)}`,
    ),
  ];
  const model = [
    'Maximize',
    `obj: ${pairs.map((pair, number) => `+ ${cost(pair)} x${number}`).join('\n')}`,
    'Subject To',
    ...rows.map((row, number) => `r${number}: ${row}`),
    'End',
  ].join('\n');
  const solution = highs.solve(model, { output_flag: false, time_limit: limitSeconds });
  const ms = performance.now() - start;
  const used = Object.values(solution.Columns).filter(
    (column) => 'Primal' in column && column.Primal > 0.5,
  ).length;
  const wanted = input.lines.reduce((sum, { quantity }) => sum + quantity, 0);
  return { ms, finished: solution.Status === 'Optimal', shortfall: wanted - used };
}

function sumsBy<T, K>(pairs: readonly T[], keyOf: (pair: T) => K): [K, string][] {
  const groups = new Map<K, string[]>();
  for (const [number, pair] of pairs.entries()) {
    const terms = groups.get(keyOf(pair));
    if (terms) terms.push(`x${number}`);
    else groups.set(keyOf(pair), [`x${number}`]);
  }
  return [...groups].map(([key, terms]) => [key, terms.join('\n+ ')]);
}

function quantityOf({ lines }: AllocationInput, key: string): number {
  return lines.find((line) => line.key === key)?.quantity ?? 0;
}
