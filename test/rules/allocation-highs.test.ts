import { describe, expect, it } from 'vitest';
import { allocate } from '../../src/rules/allocation/allocate.js';
import { solveByHighs } from '../support/highs-allocation.js';
import { mixedInstance, seeds } from '../support/mixed-allocations.js';

// Takes seconds, so it is no part of `npm run mutate`.
describe('the cheapest allocation, beside a solver', () => {
  it.each([
    { from: 1, count: 260, largest: { lines: 5, items: 14, units: 12 } },
    { from: 1001, count: 60, largest: { lines: 8, items: 60, units: 50 } },
    { from: 2001, count: 8, largest: { lines: 12, items: 300, units: 120 } },
  ])(
    'costs what the MILP solver HiGHS finds: $count instances of up to $largest.items items',
    async (set) => {
      for (const seed of seeds(set.from, set.count)) {
        const input = mixedInstance(seed, set.largest);
        const { cost } = await solveByHighs(input);
        expect({ seed, cost: allocate(input).cost }).toEqual({ seed, cost });
      }
    },
  );
});
