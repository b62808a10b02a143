import type { AllocationCost, AllocationInput, FitOption } from '../../src/rules/allocation/allocation.js';

/** The cost figures in order of weight. */
export const COST_LEVELS = [
  'shortfall',
  'transport',
  'overRatingPermille',
  'daysToSpare',
  'tagRank',
] as const;
export type CostLevel = (typeof COST_LEVELS)[number];

/** One item used on one line, as the oracles see it. */
export interface PricedPair {
  readonly itemId: number;
  readonly option: FitOption;
  readonly tagRank: number;
}

/** Every fit pair, with tag ranks from the numeric collation of the Unicode CLDR: an order that is not our own. */
export function pricedPairs({ candidates }: AllocationInput): readonly PricedPair[] {
  const collator = new Intl.Collator('en', { numeric: true });
  const sorted = [...candidates].sort((left, right) => collator.compare(left.tag, right.tag));
  return sorted.flatMap(({ itemId, options }, tagRank) =>
    options.map((option) => ({ itemId, option, tagRank })),
  );
}

/** The cost of using these pairs and no others. */
export function costOfPairs(input: AllocationInput, pairs: readonly PricedPair[]): AllocationCost {
  const wanted = input.lines.reduce((sum, { quantity }) => sum + quantity, 0);
  const total = (figure: (pair: PricedPair) => number): number =>
    pairs.reduce((sum, pair) => sum + figure(pair), 0);
  return {
    shortfall: wanted - pairs.length,
    transport: total(({ option }) => option.transport),
    overRatingPermille: total(({ option }) => option.overRatingPermille),
    daysToSpare: total(({ option }) => option.daysToSpare),
    tagRank: total(({ tagRank }) => tagRank),
  };
}
