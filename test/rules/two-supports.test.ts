import { describe, expect, it } from 'vitest';
import { Exact } from '../../src/rules/quantities/exact.js';
import {
  centreIsBetween,
  heavierShare,
  sharesOfTwoSupports,
  sizeOf,
} from '../../src/rules/statics/two-supports.js';
import { seededRandom } from '../support/seeded-random.js';

const of = (value: string | number): Exact => Exact.of(value);

function shares(load: string, first: string, second: string): string[] {
  const { firstKg, secondKg } = sharesOfTwoSupports(of(load), { firstM: of(first), secondM: of(second) });
  return [firstKg.toString(), secondKg.toString()];
}

describe('two supports', () => {
  it.each([
    ['in the middle', '100', '2', '2', ['50', '50']],
    ['nearer the first', '420', '0.6', '1.2', ['280', '140']],
    ['on the first', '100', '0', '3', ['100', '0']],
    ['on the second', '100', '3', '0', ['0', '100']],
    // 100 × 4 ÷ 3 and 100 × −1 ÷ 3: rounded away from nought, both.
    ['beyond the first', '100', '-1', '4', ['133.333334', '-33.333334']],
    ['beyond the second', '100', '4', '-1', ['-33.333334', '133.333334']],
    ['that do not divide', '100', '1', '2', ['66.666667', '33.333334']],
    // The load itself is rounded up to six places first.
    ['of many places', '0.0000001', '1', '1', ['0.000001', '0.000001']],
    ['of too little to see on one', '1', '0.00000001', '1', ['1', '0.000001']],
  ])('share a load %s', (_where, load, first, second, expected) => {
    expect(shares(load, first, second)).toEqual(expected);
  });

  it.each([
    ['0', '0'],
    ['1', '-1'],
    ['1', '-1.01'],
  ])('in one place, %s and %s, share nothing', (first, second) => {
    expect(() => shares('1', first, second)).toThrow(
      new RangeError('two supports in one place share nothing'),
    );
  });

  it('share a load that is hardly outside so that the lift-off shows', () => {
    expect(shares('1', '-0.00000001', '1')[1]).toBe('-0.000001');
  });

  it('balance forces and moments, and never carry less than the load', () => {
    const random = seededRandom(31);
    for (let round = 0; round < 3000; round++) {
      const load = random.whole(1, 9_000_000) / 1000;
      const apart = random.whole(1, 12_000) / 1000;
      const first = random.whole(-12_000, 24_000) / 1000;
      const second = of(apart).minus(of(first));
      const { firstKg, secondKg } = sharesOfTwoSupports(of(load), { firstM: of(first), secondM: second });
      const sum = firstKg.plus(secondKg);
      expect(sum.isLessThan(of(load))).toBe(false);
      expect(sum.minus(of(load)).toNumber()).toBeLessThan(2.1e-6);
      const momentAboutFirst = load * first - secondKg.toNumber() * apart;
      expect(Math.abs(momentAboutFirst)).toBeLessThan(1e-5 * Math.max(1, apart));
    }
  });
});

describe('the heavier share', () => {
  it.each([
    // 486 × (0.45 + 0.05) ÷ 0.9, either way
    ['486', '0.9', '0.05', '270'],
    ['486', '0.9', '-0.05', '270'],
    ['486', '0.9', '0', '243'],
    ['300', '3', '0.5', '200'],
    ['100', '2', '1', '100'],
    ['100', '3', '0.5', '66.666667'],
    ['100', '2', '1.5', '125'],
  ])('of %s kg on supports %s m apart, %s m off the middle, is %s kg', (load, apart, offset, heavier) => {
    expect(heavierShare(of(load), { apartM: of(apart), offsetM: of(offset) }).toString()).toBe(heavier);
  });

  it('is never less for a heavier load, a greater offset, or supports closer together', () => {
    const random = seededRandom(32);
    for (let round = 0; round < 1000; round++) {
      const [load, apart, offset] = [random.whole(1, 5000), random.whole(2, 90), random.whole(0, 40)];
      const share = (kg: number, m: number, off: number): Exact =>
        heavierShare(of(kg), { apartM: of(m / 10), offsetM: of(off / 10) });
      const before = share(load, apart, offset);
      expect(share(load + random.whole(1, 9), apart, offset).isLessThan(before)).toBe(false);
      expect(share(load, apart, offset + random.whole(1, 9)).isLessThan(before)).toBe(false);
      expect(share(load, random.whole(1, apart), offset).isLessThan(before)).toBe(false);
      expect(before.times(of(2)).isLessThan(of(load))).toBe(false);
    }
  });
});

describe('a centre of gravity', () => {
  it.each([
    ['1.499999', true],
    ['1.5', false],
    ['1.500001', false],
    ['-1.499999', true],
    ['-1.5', false],
    ['0', true],
  ])('%s m off the middle of supports 3 m apart lies between them: %s', (offset, between) => {
    expect(centreIsBetween({ apartM: of('3'), offsetM: of(offset) })).toBe(between);
  });

  it('is as far off one way as the other', () => {
    expect([sizeOf(of('-0.3')), sizeOf(of('0.3')), sizeOf(of('0'))].map(String)).toEqual(['0.3', '0.3', '0']);
  });
});
