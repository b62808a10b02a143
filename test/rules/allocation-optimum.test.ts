import { describe, expect, it } from 'vitest';
import { allocate } from '../../src/rules/allocation/allocate.js';
import type { Allocation, AllocationCost, AllocationInput } from '../../src/rules/allocation/allocation.js';
import { COST_LEVELS, costOfPairs, type PricedPair, pricedPairs } from '../support/allocation-costs.js';
import { reordered } from '../support/allocation-instances.js';
import { mixedInstance, seeds } from '../support/mixed-allocations.js';

/** The pairs an allocation uses; a chosen item without such an option, or chosen twice, makes the count fall short. */
function pairsUsed(input: AllocationInput, { chosen }: Allocation): readonly PricedPair[] {
  const lineOf = new Map(chosen.map(({ itemId, lineKey }) => [itemId, lineKey]));
  return pricedPairs(input).filter(({ itemId, option }) => lineOf.get(itemId) === option.lineKey);
}

function countOn(lineKey: string, { chosen }: Allocation): number {
  return chosen.filter((choice) => choice.lineKey === lineKey).length;
}

/** Tries every way there is to use the items, pins included. */
function bestByTrial(input: AllocationInput): AllocationCost {
  const pinned = new Map(input.pins.map(({ itemId, lineKey }) => [itemId, lineKey]));
  const room = new Map(input.lines.map(({ key, quantity }) => [key, quantity]));
  const pairs = pricedPairs(input);
  let best: AllocationCost | undefined;
  const tryFrom = (place: number, used: readonly PricedPair[]): void => {
    const item = input.candidates[place];
    if (!item) {
      const cost = costOfPairs(input, used);
      if (!best || isLess(cost, best)) best = cost;
      return;
    }
    const pin = pinned.get(item.itemId);
    if (pin === undefined) tryFrom(place + 1, used);
    for (const pair of pairs.filter(({ itemId }) => itemId === item.itemId)) {
      const { lineKey } = pair.option;
      const taken = used.filter(({ option }) => option.lineKey === lineKey).length;
      if (taken < (room.get(lineKey) ?? 0) && (pin ?? lineKey) === lineKey)
        tryFrom(place + 1, [...used, pair]);
    }
  };
  tryFrom(0, []);
  if (!best) throw new Error('the pins cannot all be honoured');
  return best;
}

function isLess(one: AllocationCost, other: AllocationCost): boolean {
  const level = COST_LEVELS.find((figure) => one[figure] !== other[figure]);
  return level !== undefined && one[level] < other[level];
}

describe('the cheapest allocation', () => {
  it('costs what trying every way finds, on 300 tiny instances', () => {
    for (const seed of seeds(5001, 300)) {
      const input = mixedInstance(seed, { lines: 3, items: 6, units: 6 });
      expect({ seed, cost: allocate(input).cost }).toEqual({ seed, cost: bestByTrial(input) });
    }
  });

  it('is a real allocation: fit items, each once, no line over its quantity, pins held, the cost as reported', () => {
    for (const seed of seeds(1, 260)) {
      const input = mixedInstance(seed, { lines: 5, items: 14, units: 12 });
      const answer = allocate(input);
      const used = pairsUsed(input, answer);
      expect(used).toHaveLength(answer.chosen.length);
      expect(new Set(answer.chosen.map(({ itemId }) => itemId)).size).toBe(answer.chosen.length);
      expect(answer.cost).toEqual(costOfPairs(input, used));
      expect(answer.unmetPins).toEqual([]);
      expect(answer.chosen).toEqual(
        expect.arrayContaining(input.pins.map((pin) => expect.objectContaining(pin))),
      );
      for (const { key, quantity } of input.lines) {
        const missing = answer.shortfalls.find(({ lineKey }) => lineKey === key)?.missing ?? 0;
        expect(countOn(key, answer) + missing).toBe(quantity);
      }
    }
  });

  it('is the same items on the same lines whatever the order of the input', () => {
    for (const seed of seeds(1, 260)) {
      const input = mixedInstance(seed, { lines: 5, items: 14, units: 12 });
      const other = reordered(seed, input);
      const lineOrder = input.lines.map(({ key }) => key);
      const answer = allocate(other);
      const back = lineOrder.flatMap((key) => answer.chosen.filter(({ lineKey }) => lineKey === key));
      expect({ seed, chosen: back, cost: answer.cost }).toEqual({
        seed,
        chosen: allocate(input).chosen,
        cost: allocate(input).cost,
      });
    }
  });
});
