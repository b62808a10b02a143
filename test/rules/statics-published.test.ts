import { describe, expect, it } from 'vitest';
import { Exact } from '../../src/rules/quantities/exact.js';
import { horizontalPull, legTension, riseOf } from '../../src/rules/statics/inclined-leg.js';
import { sharesOfTwoSupports } from '../../src/rules/statics/two-supports.js';
import { recommendedSpacing } from '../../src/rules/supports/recommended-spacing.js';
import { spreaderBar } from '../../src/rules/unloading/spreader-bar.js';
import { golden } from './golden.js';
import { liftedPanel } from './lift-panels.js';

interface Tensions {
  readonly loadAngleFactors: {
    tolerance: number;
    rows: readonly (readonly [angle: number, factor: number])[];
  };
  readonly twoLegs: readonly { name: string; load: number; angle: number; tension: number }[];
  readonly legs: readonly {
    name: string;
    share: number;
    length: number;
    rise: number;
    tension: number;
    pull?: number;
  }[];
  readonly spreaderBars: readonly {
    name: string;
    load: string;
    bar: number;
    apart: number;
    legLength: number;
    drop: number;
    tension: number;
    compression: number;
  }[];
}
interface Shares {
  readonly shares: readonly {
    name: string;
    load: number;
    first: number;
    second: number;
    carries: [number, number];
  }[];
}
interface Beams {
  readonly points: readonly { name: string; apart: number; overhang: number }[];
  readonly moments: { leastOfWL2: number; atEndsOfWL2: number };
  readonly beams: readonly {
    name: string;
    supports: [number, number];
    loads: readonly { load: number; at: number }[];
    carries: [number, number];
  }[];
}

const tensions = golden<Tensions>('sling-tension');
const beams = golden<Beams>('support-points');
const { tolerance } = tensions.loadAngleFactors;

/** A leg of ten metres at an angle to the horizontal. */
function legAt(angleDeg: number): { lengthM: Exact; runM: Exact } {
  const run = 10 * Math.cos((angleDeg * Math.PI) / 180);
  return { lengthM: Exact.of(10), runM: Exact.of(run.toFixed(9)) };
}

function legOf(length: number, rise: number): { lengthM: Exact; runM: Exact } {
  return { lengthM: Exact.of(length), runM: Exact.of(Math.sqrt(length ** 2 - rise ** 2).toFixed(9)) };
}

describe('the tension in a leg', () => {
  it('has all thirteen printed factors', () => {
    expect(tensions.loadAngleFactors.rows).toHaveLength(13);
  });

  it.each(tensions.loadAngleFactors.rows)('at %d degrees is %f of its share', (angle, factor) => {
    expect(Math.abs(legTension(Exact.of(1), legAt(angle)).toNumber() - factor)).toBeLessThan(tolerance);
  });

  it.each(tensions.twoLegs)(
    '$name: $load on two legs at $angle degrees is $tension',
    ({ load, angle, tension }) => {
      const share = load / 2;
      const ours = legTension(Exact.of(share), legAt(angle)).toNumber();
      expect(Math.abs(ours - tension)).toBeLessThan(share * tolerance);
    },
  );

  it.each(tensions.legs)(
    '$name: $share by its lengths is $tension',
    ({ share, length, rise, tension, pull }) => {
      const leg = legOf(length, rise);
      expect(Math.abs(riseOf(leg).toNumber() - rise)).toBeLessThan(0.00001);
      // Printed to whole kilograms or pounds, or to one place.
      expect(Math.abs(legTension(Exact.of(share), leg).toNumber() - tension)).toBeLessThan(0.5);
      if (pull !== undefined) expect(horizontalPull(Exact.of(share), leg).toNumber()).toBeCloseTo(pull, 1);
    },
  );

  it.each(tensions.spreaderBars)('$name: a spreader bar under $load', (row) => {
    const result = spreaderBar({
      panels: [liftedPanel('A1', { packedKg: String(row.load) })],
      handlingFactor: Exact.of(1),
      spreaderBarMassKg: Exact.of(row.bar),
      dropSpacingM: Exact.of(row.apart),
      topLegLengthM: Exact.of(row.legLength),
      leastLegAngleDeg: '60',
    });
    if (!result.ok) throw new Error('refused');
    expect(result.figures.dropLoadKg.toNumber()).toBe(row.drop);
    expect(result.figures.topLegLoadKg.toNumber()).toBeCloseTo(row.tension, 1);
    expect(Math.abs(result.figures.barCompressionKg.toNumber() - row.compression)).toBeLessThan(0.1);
  });
});

describe('two supports', () => {
  it.each(golden<Shares>('load-share').shares)('$name: $load', ({ load, first, second, carries }) => {
    const distances = { firstM: Exact.of(first), secondM: Exact.of(second) };
    const { firstKg, secondKg } = sharesOfTwoSupports(Exact.of(load), distances);
    expect([firstKg.toNumber(), secondKg.toNumber()]).toEqual(carries);
  });

  it.each(beams.beams)(
    '$name: carry every load on the beam',
    ({ supports: [left, right], loads, carries }) => {
      const shares = loads.map(({ load, at }) =>
        sharesOfTwoSupports(Exact.of(load), { firstM: Exact.of(at - left), secondM: Exact.of(right - at) }),
      );
      const sum = (values: readonly Exact[]): number => values.reduce((a, b) => a.plus(b)).toNumber();
      expect([
        sum(shares.map(({ firstKg }) => firstKg)),
        sum(shares.map(({ secondKg }) => secondKg)),
      ]).toEqual(carries);
    },
  );
});

describe('the recommended support points', () => {
  // A beam of 10 km makes whole centimetres a millionth of it.
  const length = 10_000;
  const apart = recommendedSpacing(Exact.of(length), Exact.of(1)).toNumber() / length;
  const overhang = (1 - apart) / 2;
  const [overSupport, inMiddle] = [overhang ** 2 / 2, 1 / 8 - overhang / 2];

  it('are those of equal moments, to four places', () => {
    const row = beams.points.find(({ name }) => name === 'equal moments');
    expect(apart.toFixed(4)).toBe(row?.apart.toFixed(4));
    expect(overhang.toFixed(4)).toBe(row?.overhang.toFixed(4));
  });

  it('lie outside the Airy points, and those outside the Bessel points', () => {
    const [bessel, airy, equal] = beams.points.map((row) => row.apart);
    expect(bessel).toBeLessThan(airy ?? 0);
    expect(airy).toBeLessThan(equal ?? 0);
    expect(airy).toBeLessThan(apart);
    expect(beams.points.map((row) => Math.abs(row.apart + 2 * row.overhang - 1) < 0.0003)).toEqual([
      true,
      true,
      true,
    ]);
  });

  it('make the moment over a support that of the middle, and the least that can be', () => {
    expect(overSupport).toBeCloseTo(inMiddle, 6);
    expect(overSupport).toBeCloseTo(beams.moments.leastOfWL2, 5);
    expect(beams.moments.atEndsOfWL2 / overSupport).toBeCloseTo(5.83, 2);
    for (const other of [overhang - 0.001, overhang + 0.001]) {
      expect(Math.max(other ** 2 / 2, 1 / 8 - other / 2)).toBeGreaterThan(overSupport);
    }
  });
});
