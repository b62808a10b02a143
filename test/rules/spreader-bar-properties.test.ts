import { describe, expect, it } from 'vitest';
import { Exact } from '../../src/rules/quantities/exact.js';
import { spreaderBar, type SpreaderBarInput } from '../../src/rules/unloading/spreader-bar.js';
import { seededRandom, type SeededRandom } from '../support/seeded-random.js';
import { liftedPanel } from './lift-panels.js';

interface Case {
  readonly packed: number;
  readonly offset: number;
  readonly factor: number;
  readonly bar: number;
  readonly apart: number;
  readonly length: number;
}

function randomCase(random: SeededRandom): Case {
  const apart = random.whole(1000, 6000) / 1000;
  return {
    packed: random.whole(50, 2000),
    offset: random.whole(0, 1) * (random.whole(0, 49) / 100) * apart,
    factor: random.whole(100, 150) / 100,
    bar: random.whole(1, 200),
    apart,
    length: (apart / 2) * (random.whole(1160, 4000) / 1000),
  };
}

function inputOf({ packed, offset, factor, bar, apart, length }: Case): SpreaderBarInput {
  const decimal = (value: number): Exact => Exact.of(value.toFixed(9));
  const centreOffsetM = offset.toFixed(9);
  return {
    panels: [liftedPanel('A1', { heightM: '9', packedKg: String(packed), centreOffsetM })],
    handlingFactor: decimal(factor),
    spreaderBarMassKg: decimal(bar),
    dropSpacingM: decimal(apart),
    topLegLengthM: decimal(length),
    leastLegAngleDeg: '30',
  };
}

interface Forces {
  readonly bar: number;
  readonly drop: number;
  readonly leg: number;
  readonly compression: number;
}

function ours(each: Case): Forces {
  const result = spreaderBar(inputOf(each));
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  const { barLoadKg, dropLoadKg, topLegLoadKg, barCompressionKg } = result.figures;
  return {
    bar: barLoadKg.toNumber(),
    drop: dropLoadKg.toNumber(),
    leg: topLegLoadKg.toNumber(),
    compression: barCompressionKg.toNumber(),
  };
}

/**
 * The bar as it really hangs on equal legs: it tilts until what hangs on it balances about the hook. From the balance of
 * forces at the hook, then at the lower end of the bar, where leg, drop and bar meet.
 */
function tilted({ packed, offset, factor, bar, apart, length }: Case): Omit<Forces, 'bar'> {
  const load = packed * factor;
  const drop = load * (0.5 + offset / apart);
  const [low, high] = [drop + bar / 2, load - drop + bar / 2];
  const half = Math.asin(apart / 2 / length);
  const tilt = Math.atan((Math.tan(half) * (low - high)) / (low + high));
  const [lowLeg, highLeg] = [half - tilt, half + tilt];
  const leg = ((low + high) * Math.sin(highLeg)) / Math.sin(lowLeg + highLeg);
  return { drop, leg, compression: leg * Math.sin(half) - low * Math.sin(tilt) };
}

describe('spreader bars at random', () => {
  it('bear the load in balance where it hangs in the middle', () => {
    const random = seededRandom(41);
    for (let round = 0; round < 1000; round++) {
      const each = { ...randomCase(random), offset: 0 };
      const { bar, drop, leg, compression } = ours(each);
      const angle = Math.acos(each.apart / 2 / each.length);
      const slack = 1e-4 * (bar + each.bar);
      expect(Math.abs(2 * drop - bar)).toBeLessThan(1e-5);
      expect(Math.abs(2 * leg * Math.sin(angle) - bar - each.bar)).toBeLessThan(slack);
      expect(Math.abs(leg * Math.cos(angle) - compression)).toBeLessThan(slack);
      expect(Math.abs(leg - tilted(each).leg)).toBeLessThan(slack);
    }
  });

  it('are never reckoned to bear less than a bar that tilts does', () => {
    const random = seededRandom(42);
    for (let round = 0; round < 1500; round++) {
      const each = randomCase(random);
      const [reckoned, real] = [ours(each), tilted(each)];
      const slack = 1e-9 * each.packed * 10;
      expect(reckoned.drop).toBeGreaterThanOrEqual(real.drop - slack);
      expect(reckoned.leg).toBeGreaterThanOrEqual(real.leg - slack);
      expect(reckoned.compression).toBeGreaterThanOrEqual(real.compression - slack);
    }
  });

  it('are not asked less by a heavier panel or bar, a greater offset or factor, or a flatter leg', () => {
    const random = seededRandom(43);
    for (let round = 0; round < 400; round++) {
      const each = randomCase(random);
      const before = ours(each);
      const harder: Case[] = [
        { ...each, packed: each.packed + 1 },
        { ...each, bar: each.bar + 1 },
        { ...each, factor: each.factor + 0.01 },
        { ...each, offset: each.offset + (each.apart / 2 - each.offset) / 2 },
      ];
      if (each.length > 0.6 * each.apart) harder.push({ ...each, length: 0.6 * each.apart });
      for (const after of harder.map(ours)) {
        expect(after.bar).toBeGreaterThanOrEqual(before.bar);
        expect(after.drop).toBeGreaterThanOrEqual(before.drop);
        expect(after.leg).toBeGreaterThanOrEqual(before.leg);
        expect(after.compression).toBeGreaterThanOrEqual(before.compression);
      }
    }
  });
});
