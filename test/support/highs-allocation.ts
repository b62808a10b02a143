import { createRequire } from 'node:module';
import type { AllocationCost, AllocationInput } from '../../src/rules/allocation/allocation.js';
import {
  COST_LEVELS,
  type CostLevel,
  costOfPairs,
  type PricedPair,
  pricedPairs,
} from './allocation-costs.js';

/** What the MILP solver found: the cost figures, and the milliseconds for all levels with building the models. */
export interface HighsAnswer {
  readonly cost: AllocationCost;
  readonly ms: number;
}

/** The package's types describe its CommonJS build only, so that is the build to load. */
const highsPackage: typeof import('highs') = createRequire(import.meta.url)('highs');
const solver = highsPackage.default();

/**
 * Solves an instance as a mixed-integer linear program with HiGHS (https://highs.dev), a general-purpose solver: one
 * binary variable for each fit pair. The five figures are minimised one after another, each held at its least value
 * while the next is minimised. All pins of the instance are fixed, so they must be such as can all be honoured.
 * @throws Error when the solver does not report an optimum.
 */
export async function solveByHighs(input: AllocationInput): Promise<HighsAnswer> {
  const highs = await solver;
  const start = performance.now();
  const pairs = pricedPairs(input);
  if (pairs.length === 0) return { cost: costOfPairs(input, []), ms: performance.now() - start };
  const rows = [...itemRows(pairs), ...lineRows(input, pairs), ...pinRows(input, pairs)];
  let used: readonly PricedPair[] = [];
  for (const level of COST_LEVELS) {
    const solution = highs.solve(model(objective(level, pairs), rows, pairs), {
      output_flag: false,
      mip_rel_gap: 0,
      mip_abs_gap: 0.5,
    });
    if (solution.Status !== 'Optimal') throw new Error(`HiGHS reports '${solution.Status}' at ${level}`);
    used = pairs.filter((_, pair) => Number(solution.Columns[`x${pair}`]?.Primal) > 0.5);
    rows.push(`${objective(level, pairs)} <= ${objectiveValue(level, used) + 0.5}`);
  }
  return { cost: costOfPairs(input, used), ms: performance.now() - start };
}

/** A unit less short is a pair more in use: the shortfall is minimised as minus the count of pairs. */
function weight(level: CostLevel, pair: PricedPair): number {
  if (level === 'shortfall') return -1;
  return level === 'tagRank' ? pair.tagRank : pair.option[level];
}

function objective(level: CostLevel, pairs: readonly PricedPair[]): string {
  return pairs.map((pair, number) => term(weight(level, pair), number)).join('\n');
}

function objectiveValue(level: CostLevel, used: readonly PricedPair[]): number {
  return used.reduce((sum, pair) => sum + weight(level, pair), 0);
}

function term(factor: number, pair: number): string {
  return `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} x${pair}`;
}

function itemRows(pairs: readonly PricedPair[]): readonly string[] {
  return [...grouped(pairs, ({ itemId }) => itemId).values()].map((terms) => `${terms.join('\n')} <= 1`);
}

function lineRows({ lines }: AllocationInput, pairs: readonly PricedPair[]): readonly string[] {
  const terms = grouped(pairs, ({ option }) => option.lineKey);
  return lines
    .filter(({ key }) => terms.has(key))
    .map(({ key, quantity }) => `${terms.get(key)?.join('\n') ?? ''} <= ${quantity}`);
}

function pinRows({ pins }: AllocationInput, pairs: readonly PricedPair[]): readonly string[] {
  return pins.map((pin) => {
    const pair = pairs.findIndex(
      ({ itemId, option }) => itemId === pin.itemId && option.lineKey === pin.lineKey,
    );
    return `1 x${pair} = 1`;
  });
}

function grouped<K>(
  pairs: readonly PricedPair[],
  keyOf: (pair: PricedPair) => K,
): ReadonlyMap<K, readonly string[]> {
  const groups = new Map<K, string[]>();
  for (const [number, pair] of pairs.entries()) {
    const terms = groups.get(keyOf(pair)) ?? [];
    terms.push(term(1, number));
    groups.set(keyOf(pair), terms);
  }
  return groups;
}

function model(goal: string, rows: readonly string[], pairs: readonly PricedPair[]): string {
  const subjectTo = rows.map((row, number) => `r${number}: ${row}`).join('\n');
  const names = pairs.map((_, number) => `x${number}`).join('\n');
  return `Minimize\nobj: ${goal}\nSubject To\n${subjectTo}\nBinary\n${names}\nEnd\n`;
}
