import { describe, expect, it } from 'vitest';
import { Exact } from '../../src/rules/quantities/exact.js';
import {
  hasRise,
  horizontalPull,
  isLeastAngle,
  isSteepEnough,
  leastLength,
  legTension,
  riseOf,
  type LeastAngle,
  type Leg,
} from '../../src/rules/statics/inclined-leg.js';
import { seededRandom } from '../support/seeded-random.js';

const of = (value: string | number): Exact => Exact.of(value);
const leg = (length: string, run: string): Leg => ({ lengthM: of(length), runM: of(run) });
const ANGLES: readonly LeastAngle[] = ['30', '45', '60'];

describe('a leg', () => {
  it.each([
    // Whole-number triangles: 3, 4, 5 and 5, 12, 13 and 8, 15, 17.
    ['5', '3', '4', '125', '75'],
    ['5', '4', '3', '166.666667', '133.333334'],
    ['13', '5', '12', '108.333334', '41.666667'],
    ['1.7', '0.8', '1.5', '113.333334', '53.333334'],
    ['2', '0', '2', '100', '0'],
    // √3 = 1.7320508...: the rise is rounded down, which asks more of the leg.
    ['2', '1', '1.73205', '115.470108', '57.735054'],
  ])('of %s m over a run of %s m', (length, run, rise, tension, pull) => {
    expect(riseOf(leg(length, run)).toString()).toBe(rise);
    expect(legTension(of(100), leg(length, run)).toString()).toBe(tension);
    expect(horizontalPull(of(100), leg(length, run)).toString()).toBe(pull);
  });

  it.each([
    ['1.500001', true],
    ['1.5', false],
    ['1.499999', false],
  ])('of %s m over a run of 1.5 m reaches its hook: %s', (length, reaches) => {
    expect(hasRise(leg(length, '1.5'))).toBe(reaches);
  });

  it('has no rise when it is shorter than its run', () => {
    expect(() => riseOf(leg('1', '1.1'))).toThrow(RangeError);
  });

  it.each([
    // At 45 degrees the rise is the run: run 1, length √2 = 1.41421356...
    ['45', '1.4142136', '1', true],
    ['45', '1.4142135', '1', false],
    // At 30 degrees the length is twice the rise; run √3, so length² = 4, run² = 3.
    ['30', '2', '1.7320508', true],
    ['30', '2', '1.7320509', false],
    // At 60 degrees the length is twice the run: exactly.
    ['60', '2', '1', true],
    ['60', '1.9999999', '1', false],
    ['60', '2.0000001', '1', true],
    ['30', '2', '0', true],
  ] as const)('is held to %s degrees: length %s, run %s is steep enough: %s', (angle, length, run, steep) => {
    expect(isSteepEnough(leg(length, run), angle)).toBe(steep);
  });

  it.each([
    ['45', '1.414214'],
    ['30', '1.154701'],
    ['60', '2'],
  ] as const)('needs for %s degrees over a run of 1 m a length of %s m', (angle, length) => {
    expect(leastLength(of(1), angle).toString()).toBe(length);
  });

  it('can be held to 30, 45 and 60 degrees, and no others', () => {
    const asked = ['30', '45', '60', '45.0', '44', '90', '0', '', 'toString'];
    expect(asked.filter(isLeastAngle)).toEqual(['30', '45', '60']);
  });
});

describe('legs at random', () => {
  it('are in balance: up with the share, sideways with the pull, within the rounding', () => {
    const random = seededRandom(33);
    for (let round = 0; round < 3000; round++) {
      const run = random.whole(0, 6000) / 1000;
      const length = run + random.whole(50, 6000) / 1000;
      const share = random.whole(1, 2000);
      const own = leg(length.toFixed(3), run.toFixed(3));
      const [tension, pull] = [
        legTension(of(share), own).toNumber(),
        horizontalPull(of(share), own).toNumber(),
      ];
      const angle = Math.acos(run / length);
      expect(tension).toBeGreaterThanOrEqual(share);
      expect(Math.abs(tension * Math.sin(angle) - share)).toBeLessThan(share * 1e-5 + 1e-5);
      expect(Math.abs(tension * Math.cos(angle) - pull)).toBeLessThan(share * 1e-4 + 1e-5);
      expect(tension).toBeGreaterThanOrEqual((share / Math.sin(angle)) * (1 - 1e-12));
    }
  });

  it('pull more the flatter they are, and are steep enough from their least length on', () => {
    const random = seededRandom(34);
    for (let round = 0; round < 1000; round++) {
      const run = of(random.whole(1, 6000) / 1000);
      const angle = random.oneOf(ANGLES);
      const least = leastLength(run, angle);
      const longer = least.plus(of(random.whole(1, 3000) / 1000));
      expect(isSteepEnough({ lengthM: least, runM: run }, angle)).toBe(true);
      expect(isSteepEnough({ lengthM: least.minus(of('0.000001')), runM: run }, angle)).toBe(false);
      expect(isSteepEnough({ lengthM: longer, runM: run }, angle)).toBe(true);
      const [flat, steep] = [least, longer].map((lengthM) => legTension(of(500), { lengthM, runM: run }));
      expect(steep && flat?.isLessThan(steep)).toBe(false);
    }
  });
});
