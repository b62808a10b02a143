import type { AllocationInput } from '../../src/rules/allocation/allocation.js';
import { allocationInstance, type InstanceShape } from './allocation-instances.js';
import { seededRandom } from './seeded-random.js';

/** From nothing to do to far too little gear; every third has pins, every fifth is drawn like a real store. */
export function mixedInstance(
  seed: number,
  largest: { lines: number; items: number; units: number },
): AllocationInput {
  const random = seededRandom(seed + 7_000_000);
  const shape: InstanceShape = {
    kind: seed % 5 === 0 ? 'store' : 'scrambled',
    lines: random.whole(1, largest.lines),
    items: random.whole(1, largest.items),
    units: random.whole(0, largest.units),
    pins: seed % 3 === 0 ? random.whole(1, 4) : 0,
  };
  return allocationInstance(seed, shape);
}

/** So many seeds in a row. */
export function seeds(from: number, count: number): readonly number[] {
  return Array.from({ length: count }, (_, place) => from + place);
}
