import { describe, expect, it } from 'vitest';
import { chartCapacity, pointsAtOrBeyond } from '../../src/rules/hosting/chart-capacity.js';
import { CHART_PROBLEM_CODES, checkChart } from '../../src/rules/hosting/check-chart.js';
import type { LoadChart } from '../../src/rules/hosting/load-chart.js';
import { Exact } from '../../src/rules/quantities/exact.js';
import { seededRandom } from '../support/seeded-random.js';
import { handler, point, truck } from './example-truck.js';
import { without } from './example-gear.js';

const at = (heightMm: string, distanceMm: string) => ({
  heightMm: Exact.of(heightMm),
  distanceMm: Exact.of(distanceMm),
});

describe('checking a chart', () => {
  const points = (...list: LoadChart['points']) => checkChart(truck({ points: list }));
  const low = point('3000', '500', '2500');

  it('finds nothing wrong with a chart of either sort', () => {
    expect(checkChart(truck())).toEqual([]);
    expect(checkChart(handler())).toEqual([]);
    expect(checkChart(without(truck(), 'attachmentCover'))).toEqual([]);
    expect(points(point('0', '100', '60000'), point('30000', '20000', '1'))).toEqual([]);
  });

  it('asks for two points', () => {
    expect(points()).toEqual([{ code: 'too_few_points' }]);
    expect(points(low)).toEqual([{ code: 'too_few_points' }]);
  });

  it.each([
    [point('', '500', '2500'), 'not_a_figure', 'heightMm'],
    [point('-1', '500', '2500'), 'not_a_figure', 'heightMm'],
    [point('30000.1', '500', '2500'), 'out_of_range', 'heightMm'],
    [point('3000', '5e2', '2500'), 'not_a_figure', 'distanceMm'],
    [point('3000', '99.9', '2500'), 'out_of_range', 'distanceMm'],
    [point('3000', '20000.1', '2500'), 'out_of_range', 'distanceMm'],
    [point('3000', '500', '2,5'), 'not_a_figure', 'capacityKg'],
    [point('3000', '500', 'x2500'), 'not_a_figure', 'capacityKg'],
    [point('3000', '500', '2500 kg'), 'not_a_figure', 'capacityKg'],
    [point('3000', '500', '0.9'), 'out_of_range', 'capacityKg'],
    [point('3000', '500', '60000.1'), 'out_of_range', 'capacityKg'],
  ] as const)('%j: %s %s', (wrong, code, figure) => {
    expect(points(wrong, low)).toEqual([{ code, point: 0, figure }]);
    expect(points(low, wrong)).toEqual([{ code, point: 1, figure }]);
  });

  it.each(['axleToForkFaceMm', 'axleToCarriageMm'] as const)('reads %s like a length', (figure) => {
    expect(checkChart(without(truck(), figure))).toEqual([{ code: 'axle_distance_missing', figure }]);
    expect(checkChart(truck({ [figure]: 'a' }))).toEqual([{ code: 'not_a_figure', figure }]);
    expect(checkChart(truck({ [figure]: '0' }))).toEqual([{ code: 'out_of_range', figure }]);
    expect(checkChart(truck({ [figure]: '5000.1' }))).toEqual([{ code: 'out_of_range', figure }]);
    expect(checkChart(handler({ [figure]: '-' }))).toEqual([{ code: 'not_a_figure', figure }]);
    expect(checkChart(handler({ [figure]: '5000' }))).toEqual([]);
  });

  it('wants the carriage behind the fork face, or level with it', () => {
    const axle = (axleToForkFaceMm: string, axleToCarriageMm: string) =>
      checkChart(truck({ axleToForkFaceMm, axleToCarriageMm }));
    expect(axle('450', '450')).toEqual([]);
    expect(axle('450', '450.1')).toEqual([{ code: 'carriage_ahead_of_forks', figure: 'axleToCarriageMm' }]);
  });

  it('asks what covers the lifter where something is said to', () => {
    const nameless = truck({ attachmentCover: { by: 'makersLetter', reference: '  ' } });
    expect(checkChart(nameless)).toEqual([{ code: 'cover_without_reference' }]);
  });

  it('wants the points by height, then by distance, each once', () => {
    expect(points(point('3000', '800', '1900'), low)).toEqual([{ code: 'out_of_order', point: 1, other: 0 }]);
    expect(points(point('4500', '500', '2000'), low)).toEqual([{ code: 'out_of_order', point: 1, other: 0 }]);
    expect(points(low, point('3000.0', '500.00', '2400'))).toEqual([
      { code: 'repeated_point', point: 1, other: 0 },
    ]);
    expect(points(low, point('3000', '800', '1900'), point('3000', '500', '9000'))).toEqual([
      { code: 'repeated_point', point: 2, other: 0 },
    ]);
  });

  it('lets no point carry more than one that is no higher and no farther out', () => {
    expect(points(low, point('3000', '800', '2500'))).toEqual([]);
    expect(points(low, point('3000', '800', '2500.1'))).toEqual([
      { code: 'capacity_rises', point: 1, other: 0 },
    ]);
    expect(points(low, point('4500', '500', '2500.1'))).toEqual([
      { code: 'capacity_rises', point: 1, other: 0 },
    ]);
    expect(points(point('3000', '800', '1000'), point('4500', '500', '2000'))).toEqual([]);
    expect(
      points(point('3000', '800', '1000'), point('4500', '500', '2000'), point('4500', '900', '1500')),
    ).toEqual([{ code: 'capacity_rises', point: 2, other: 0 }]);
  });

  it('tells everything at once', () => {
    const chart = truck({
      points: [point('x', '1', '2500')],
      axleToForkFaceMm: '0',
      attachmentCover: { by: 'plate', reference: '' },
    });
    expect(checkChart(without(chart, 'axleToCarriageMm')).map(({ code }) => code)).toEqual([
      'too_few_points',
      'not_a_figure',
      'out_of_range',
      'out_of_range',
      'axle_distance_missing',
      'cover_without_reference',
    ]);
    expect(new Set(CHART_PROBLEM_CODES).size).toBe(CHART_PROBLEM_CODES.length);
  });
});

describe('reading a chart', () => {
  it.each([
    ['0', '0', '2500'],
    ['3000', '500', '2500'],
    ['3000', '500.1', '1900'],
    ['3000', '800', '1900'],
    ['3000.1', '500', '2000'],
    ['4500', '500.1', '1500'],
  ])('at %s mm height and %s mm out: %s kg', (height, distance, kg) => {
    const found = chartCapacity(truck(), at(height, distance));
    expect(found.ok && found.capacityKg.toString()).toBe(kg);
  });

  it('says which point ruled', () => {
    expect(chartCapacity(handler(), at('6000.5', '1500'))).toMatchObject({
      ok: true,
      workings: [
        {
          title: 'What the load chart allows there',
          formula: 'capacity = the greatest of the points at this height and reach or beyond',
          inputs: [
            { name: 'height needed', value: '6000.5', unit: 'mm' },
            { name: 'reach needed', value: '1500', unit: 'mm' },
            { name: 'height of the point', value: '9000', unit: 'mm' },
            { name: 'reach of the point', value: '2000', unit: 'mm' },
          ],
          result: { name: 'capacity', value: '2500', unit: 'kg' },
          source: 'common-practice',
          caution: 'A chart is not read between its points or past the last one.',
        },
      ],
    });
    const found = chartCapacity(truck(), at('3000', '600'));
    expect(found.ok && found.workings[0]).toMatchObject({
      formula: 'capacity = the greatest of the points at this height and load centre or beyond',
      inputs: [{}, { name: 'load centre needed' }, {}, { name: 'load centre of the point', value: '800' }],
    });
  });

  it.each([
    ['too high', truck(), at('4500.1', '500'), { subject: 'heightMm', needed: '4500.1', has: '4500' }],
    ['too far out', truck(), at('3000', '800.1'), { subject: 'loadCentreMm', needed: '800.1', has: '800' }],
    [
      'too far at that height',
      handler(),
      at('6001', '2001'),
      { subject: 'reachMm', needed: '2001', has: '2000' },
    ],
  ])('says nothing of a place %s', (_, chart, place, expected) => {
    const found = pointsAtOrBeyond(chart, place);
    const { subject, needed, has } = found.ok ? {} : found.outside;
    expect({ subject, needed: needed?.toString(), has: has?.toString() }).toEqual(expected);
    expect(chartCapacity(chart, place)).toEqual(found);
  });

  it('never gains by going higher or farther, and never gives what no point states', () => {
    const random = seededRandom(178);
    const stated = truck().points.map(({ capacityKg }) => capacityKg);
    for (let run = 0; run < 1500; run += 1) {
      const [height, distance] = [random.whole(0, 4700), random.whole(0, 900)];
      const near = chartCapacity(truck(), at(String(height), String(distance)));
      const far = chartCapacity(
        truck(),
        at(String(height + random.whole(0, 2000)), String(distance + random.whole(0, 500))),
      );
      if (near.ok) expect(stated).toContain(near.capacityKg.toString());
      if (far.ok) expect(near.ok && !near.capacityKg.isLessThan(far.capacityKg)).toBe(true);
    }
  });
});
