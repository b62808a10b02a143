import { describe, expect, it } from 'vitest';
import { loadInBalance, type AxleMoments } from '../../src/rules/hosting/moment-balance.js';
import type { HostingNeed } from '../../src/rules/hosting/hosting-need.js';
import { residualCapacity } from '../../src/rules/hosting/residual-capacity.js';
import { Exact } from '../../src/rules/quantities/exact.js';
import { seededRandom } from '../support/seeded-random.js';
import { without } from './example-gear.js';
import { handler, hosting, point, truck } from './example-truck.js';
import { golden } from './golden.js';

type Letters = Record<'A' | 'B' | 'C' | 'D' | 'E' | 'F' | 'G' | 'H', number>;
interface Published {
  readonly principle: readonly {
    readonly capacity: number;
    readonly from: number;
    readonly to: number;
    readonly left: number;
    readonly tolerance: number;
  }[];
  readonly derived: readonly (Letters & { readonly name: string; readonly net: number })[];
}

const published = golden<Published>('truck-capacity');

function moments({ A, B, C, D, E, F, G, H }: Letters): AxleMoments {
  return {
    capacityKg: Exact.of(A),
    axleToForkFaceMm: Exact.of(B),
    loadCentreMm: Exact.of(C),
    attachmentMassKg: Exact.of(D),
    axleToCarriageMm: Exact.of(E),
    attachmentCentreMm: Exact.of(F),
    attachmentDepthMm: Exact.of(G),
    loadDepthMm: Exact.of(H),
  };
}

describe('moments about the front axle', () => {
  it.each(published.principle)(
    'agree with the printed $capacity at $from, so $left at $to',
    ({ capacity, from, to, left, tolerance }) => {
      const found = loadInBalance(moments({ A: capacity, B: 0, C: from, D: 0, E: 0, F: 0, G: 0, H: to }));
      expect(found.toNumber()).toBeGreaterThanOrEqual(left);
      expect(found.toNumber() - left).toBeLessThanOrEqual(tolerance);
    },
  );

  it.each(published.derived)('agree with row $name: $net', ({ net, ...letters }) => {
    expect(Math.abs(loadInBalance(moments(letters)).toNumber() - net)).toBeLessThanOrEqual(0.05);
  });

  it('are those the chart states, for load and attachment together', () => {
    const random = seededRandom(1910);
    for (let run = 0; run < 5000; run += 1) {
      const letters = someLetters(random);
      const load = loadInBalance(moments(letters)).toNumber();
      const { A, B, C, D, E, F, G, H } = letters;
      const [stated, attachment] = [A * (B + C), D * (E + F)];
      if (load === 0) expect(attachment).toBeGreaterThanOrEqual(stated - 1e-2);
      else {
        const left = stated - (attachment + load * (E + G + H));
        expect(left).toBeGreaterThanOrEqual(-1e-6 * stated);
        expect(left).toBeLessThanOrEqual(1e-6 * (E + G + H) + 1e-9 * stated);
      }
    }
  });

  it('leave nothing where the attachment takes up the moment', () => {
    const letters = { A: 1000, B: 500, C: 500, D: 1000, E: 500, F: 500, G: 100, H: 60 };
    expect(loadInBalance(moments(letters)).toString()).toBe('0');
    expect(loadInBalance(moments({ ...letters, F: 501 })).toString()).toBe('0');
    expect(loadInBalance(moments({ ...letters, F: 499 })).toString()).toBe('1.515151');
  });
});

function someLetters(random: ReturnType<typeof seededRandom>): Letters {
  const E = random.whole(200, 700);
  return {
    A: random.whole(1000, 8000),
    B: E + random.whole(0, 80),
    C: random.whole(400, 900),
    D: random.whole(0, 900),
    E,
    F: random.whole(0, 600),
    G: random.whole(0, 500),
    H: random.whole(20, 120),
  };
}

const net = (need: Partial<HostingNeed>, chart = truck()) => {
  const residual = residualCapacity(chart, hosting(need));
  return residual.ok
    ? residual.netKg.toString()
    : `${residual.outside.subject} ${residual.outside.needed?.toString()} > ${residual.outside.has?.toString()}`;
};

describe('a fork truck with the lifter on it', () => {
  it('shows its working', () => {
    // By hand: (2500 × (450 + 500) − 350 × (400 + 250)) ÷ (400 + 490 + 60) = 2,147,500 ÷ 950 = 2,260.526…; 2,500 − 350 = 2,150.
    const residual = residualCapacity(truck(), hosting());
    const mm = (name: string, value: string) => ({ name, value, unit: 'mm' });
    const kg = (name: string, value: string) => ({ name, value, unit: 'kg' });
    expect(residual.ok && residual.netKg.toString()).toBe('2150');
    expect(residual.ok && residual.workings).toEqual([
      {
        title: "The panel's load centre, from the fork face",
        formula: 'load centre = axle to carriage + depth of lifter + half panel − axle to fork face',
        inputs: [
          mm('axle to carriage', '400'),
          mm('depth of lifter', '490'),
          mm('half panel', '60'),
          mm('axle to fork face', '450'),
        ],
        result: mm('load centre', '500'),
        source: 'common-practice',
      },
      {
        title: "Moments about the front axle, by the chart's point at 3000 mm height",
        formula:
          'by moments = (capacity × (axle to fork face + chart load centre) − lifter × (axle to carriage + centre of lifter)) ÷ (axle to carriage + depth of lifter + half panel)',
        inputs: [
          kg('capacity', '2500'),
          mm('axle to fork face', '450'),
          mm('chart load centre', '500'),
          kg('lifter', '350'),
          mm('axle to carriage', '400'),
          mm('centre of lifter', '250'),
          mm('depth of lifter', '490'),
          mm('half panel', '60'),
        ],
        result: kg('by moments', '2260.526315'),
        source: 'cfr-1910-178',
        caution:
          "The truck maker's plate for this attachment governs. A hung load swings: keep it low and slow.",
      },
      {
        title: 'What the truck still carries below the lifter',
        formula: 'net = the lesser of by moments and capacity − lifter',
        inputs: [kg('by moments', '2260.526315'), kg('capacity', '2500'), kg('lifter', '350')],
        result: kg('net', '2150'),
        source: 'doe-std-1090',
      },
    ]);
  });

  it('goes by the moments where they leave less', () => {
    // (2500 × 950 − 350 × (400 + 900)) ÷ 950 = 1,920,000 ÷ 950
    expect(net({ attachmentCentreMm: '900' })).toBe('2021.052631');
  });

  it('uses only points whose load centre is as far out as the panel, or farther', () => {
    expect(net({ attachmentDepthMm: '490.1' })).toBe('1550');
    expect(net({ attachmentDepthMm: '790' })).toBe('1550');
    expect(net({ attachmentDepthMm: '790.1' })).toBe('loadCentreMm 800.1 > 800');
  });

  it('uses only points as high as the lift, or higher', () => {
    expect(net({ heightMm: '3000.1' })).toBe('1650');
    expect(net({ heightMm: '4500' })).toBe('1650');
    expect(net({ heightMm: '4500.1' })).toBe('heightMm 4500.1 > 4500');
  });

  it('takes the best of the points that hold, wherever it stands', () => {
    // A point farther out may turn more: 1900 × 1250 against 2000 × 950, with a lifter whose centre is far out.
    const points = [point('3000', '500', '2000'), point('3000', '800', '1990'), point('3000', '900', '100')];
    // (1990 × 1250 − 350 × 2400) ÷ 950 = 1,647,500 ÷ 950 is more than 1,640; (2000 × 950 − 840,000) ÷ 950 = 1,115.8
    expect(net({ attachmentCentreMm: '2000' }, truck({ points }))).toBe('1640');
  });

  it('carries nothing where the lifter is all it can hold', () => {
    expect(net({ attachmentMassKg: '2500' })).toBe('0');
    expect(net({ attachmentMassKg: '2499' })).toBe('1');
    expect(net({ attachmentMassKg: '2600' })).toBe('0');
  });

  it('is not judged without the distances from the axle', () => {
    for (const figure of ['axleToForkFaceMm', 'axleToCarriageMm'] as const) {
      expect(() => residualCapacity(without(truck(), figure), hosting())).toThrow(
        new RangeError('the chart has no distances from the front axle'),
      );
    }
  });
});

describe('a telescopic handler with the lifter on it', () => {
  it('carries what its chart allows there, less the lifter', () => {
    const residual = residualCapacity(handler(), hosting({ heightMm: '6000', reachMm: '2001' }));
    expect(residual.ok && residual.netKg.toString()).toBe('1150');
    expect(residual.ok && residual.workings.map(({ title }) => title)).toEqual([
      'What the load chart allows there',
      'What the machine still carries below the lifter',
    ]);
    expect(residual.ok && residual.workings[1]).toEqual({
      title: 'What the machine still carries below the lifter',
      formula: 'net = capacity − lifter',
      inputs: [
        { name: 'capacity', value: '1500', unit: 'kg' },
        { name: 'lifter', value: '350', unit: 'kg' },
      ],
      result: { name: 'net', value: '1150', unit: 'kg' },
      source: 'doe-std-1090',
      caution: "The maker's chart for this machine with this attachment governs.",
    });
  });

  it('is not judged past its chart, or where the reach is not said', () => {
    expect(net({ heightMm: '9000.1' }, handler())).toBe('heightMm 9000.1 > 9000');
    expect(net({ reachMm: '4001' }, handler())).toBe('reachMm 4001 > 4000');
    expect(residualCapacity(handler(), without(hosting(), 'reachMm'))).toEqual({
      ok: false,
      outside: { subject: 'reachMm' },
    });
  });

  it('carries nothing where the lifter is all it can hold', () => {
    expect(net({ attachmentMassKg: '3000' }, handler())).toBe('0');
    expect(net({ attachmentMassKg: '3001' }, handler())).toBe('0');
    expect(net({ attachmentMassKg: '2999.5' }, handler())).toBe('0.5');
  });
});

describe('any machine', () => {
  const FIGURES = [
    'attachmentMassKg',
    'attachmentCentreMm',
    'attachmentDepthMm',
    'loadDepthMm',
    'heightMm',
    'reachMm',
  ] as const;

  it('never carries more for a greater distance or mass, and never more than its chart states', () => {
    const random = seededRandom(2359);
    for (let run = 0; run < 2000; run += 1) {
      const chart = random.percent(50) ? truck() : handler();
      const need = {
        ...hosting(),
        attachmentMassKg: String(random.whole(0, 1200)),
        attachmentCentreMm: String(random.whole(0, 1500)),
        attachmentDepthMm: String(random.whole(0, 900)),
        loadDepthMm: String(random.whole(20, 150)),
        heightMm: String(random.whole(0, 5000)),
        reachMm: String(random.whole(0, 4500)),
      };
      const figure = random.oneOf(FIGURES);
      const more = { ...need, [figure]: String(Number(need[figure]) + random.whole(1, 600)) };
      const [before, after] = [residualCapacity(chart, need), residualCapacity(chart, more)];
      const [had, has] = [before, after].map((residual) => (residual.ok ? residual.netKg.toNumber() : -1));
      expect(has).toBeLessThanOrEqual(had ?? -1);
      const most = Math.max(...chart.points.map(({ capacityKg }) => Number(capacityKg)));
      expect(had).toBeLessThanOrEqual(most - Number(need.attachmentMassKg) < 0 ? 0 : most);
    }
  });
});
