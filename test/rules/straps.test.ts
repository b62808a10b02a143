import { describe, expect, it } from 'vitest';
import type { LiftedPanel } from '../../src/rules/calculations/calculation.js';
import { Exact } from '../../src/rules/quantities/exact.js';
import { convert, massAsForce, toSi } from '../../src/rules/quantities/units.js';
import { straps } from '../../src/rules/strapping/straps.js';
import { seededRandom } from '../support/seeded-random.js';
import { golden } from './golden.js';
import { figuresOf, liftedPanel, somePanels } from './lifted-panels.js';

interface Lashing {
  readonly directPull: readonly {
    readonly lashingCapacity: { readonly value: string; readonly unit: string };
    readonly holdsKg: string;
    readonly notKg: string;
    readonly source: string;
  }[];
  readonly sideways: readonly { readonly share: string; readonly source: string }[];
  readonly together: readonly { readonly leastShare: string; readonly source: string }[];
  readonly conversions: readonly {
    readonly value: string;
    readonly from: string;
    readonly to: string;
    readonly printed: string;
    readonly source: string;
  }[];
}

const lashing = golden<Lashing>('lashing');

interface Words {
  readonly lifterDepthM?: string;
  readonly strapTailM?: string;
  readonly sidewaysShare?: string;
}

function strapping(
  panels: readonly LiftedPanel[],
  { lifterDepthM = '0.35', strapTailM = '0.8', sidewaysShare = '0.5' }: Words = {},
) {
  return straps({
    panels,
    lifterDepthM: Exact.of(lifterDepthM),
    strapTailM: Exact.of(strapTailM),
    sidewaysShare: Exact.of(sidewaysShare),
  });
}

const LABEL =
  'Lashing straps are not lifting accessories; the instructions of the lifter’s maker name the straps. Go by the lashing capacity on the label: a breaking force is not a lashing capacity. A strap in a loop is counted once, not double.';

describe('the straps of a panel lifter', () => {
  it('hold the heaviest panel and reach round the largest, with every step shown', () => {
    const result = strapping([
      liftedPanel({ name: 'heavy', massKg: '500' }),
      liftedPanel({ name: 'tall', heightM: '9.1', widthM: '1.1', massKg: '400' }),
      liftedPanel({ name: 'wide', widthM: '1.4', massKg: '300' }),
    ]);
    // By hand: 500 × 9.80665 = 4903.325 N, a half 2451.6625 N, half of a half 1225.83125 N.
    // 9.1 + 0.112 + 0.35 + 0.8 = 10.362 m; 2 × (1.4 + 0.112 + 0.35) + 0.8 = 4.524 m.
    const weight = { name: 'weight', value: '4903.325', unit: 'N' };
    const besides = [
      { name: 'thickness', value: '0.112', unit: 'm' },
      { name: 'lifter depth', value: '0.35', unit: 'm' },
      { name: 'tail', value: '0.8', unit: 'm' },
    ];
    expect(result.ok && result.workings).toEqual([
      {
        title: 'Panel heavy: weight, its mass as force',
        formula: 'F = m × g',
        inputs: [
          { name: 'm', value: '500', unit: 'kg' },
          { name: 'g', value: '9.80665', unit: 'm/s2' },
        ],
        result: { name: 'F', value: '4903.325', unit: 'N' },
        source: 'nist-sp811',
      },
      {
        title: 'Panel heavy: force in a strap under the bottom rail',
        formula: 'weight ÷ 2',
        inputs: [weight],
        result: { name: 'force in a strap under the bottom rail', value: '2451.6625', unit: 'N' },
        source: 'common-practice',
        caution: `The two straps hold the whole weight as if the lifter held none. ${LABEL}`,
      },
      {
        title: 'Panel heavy: force in a strap round the width',
        formula: 'weight × sideways share ÷ 2',
        inputs: [weight, { name: 'sideways share', value: '0.5', unit: '' }],
        result: { name: 'force in a strap round the width', value: '1225.83125', unit: 'N' },
        source: 'en-12195-1',
        caution: LABEL,
      },
      {
        title: 'Panel tall: length of a strap under the bottom rail',
        formula: '2 × (height ÷ 2) + thickness + lifter depth + tail',
        inputs: [{ name: 'height', value: '9.1', unit: 'm' }, ...besides],
        result: { name: 'length of a strap under the bottom rail', value: '10.362', unit: 'm' },
        source: 'common-practice',
        caution:
          'The lifter is taken to grip the panel in the middle of its height. For a grip above the middle add twice what it lies higher.',
      },
      {
        title: 'Panel wide: length of a strap round the width',
        formula: '2 × (width + thickness + lifter depth) + tail',
        inputs: [{ name: 'width', value: '1.4', unit: 'm' }, ...besides],
        result: { name: 'length of a strap round the width', value: '4.524', unit: 'm' },
        source: 'common-practice',
      },
    ]);
    expect(figuresOf(result, 'underRailForceN')).toBe(2451.6625);
    expect(figuresOf(result, 'roundWidthForceN')).toBe(1225.83125);
    expect(figuresOf(result, 'underRailLengthM')).toBe(10.362);
    expect(figuresOf(result, 'roundWidthLengthM')).toBe(4.524);
  });

  it('are as long as the longest way round, whatever makes it long', () => {
    // 7.4 + 0.2 is longer than 7.45 + 0.112, and 1.2 + 0.2 than 1.21 + 0.112.
    const thick = liftedPanel({ name: 'thick', heightM: '7.4', widthM: '1.2', thicknessM: '0.2' });
    const result = strapping([liftedPanel(), thick]);
    expect(result.ok && result.workings.slice(3).map(({ title }) => title)).toEqual([
      'Panel thick: length of a strap under the bottom rail',
      'Panel thick: length of a strap round the width',
    ]);
  });

  it('round their forces up at the sixth place', () => {
    // 0.001 kg weighs 0.00980665 N: half is 0.004903325, half of half 0.0024516625.
    const result = strapping([liftedPanel({ massKg: '0.001' })]);
    expect(figuresOf(result, 'underRailForceN')).toBe(0.004904);
    expect(figuresOf(result, 'roundWidthForceN')).toBe(0.002452);
  });

  it('refuse what cannot be, all of it', () => {
    const depth = { code: 'parameter_out_of_range', subject: 'lifterDepthM', unit: 'm' };
    const tail = { code: 'parameter_out_of_range', subject: 'strapTailM', unit: 'm' };
    const share = { code: 'parameter_out_of_range', subject: 'sidewaysShare' };
    const all = strapping([liftedPanel()], { lifterDepthM: '0', strapTailM: '-0.1', sidewaysShare: '0' });
    expect(all).toEqual({
      ok: false,
      problems: [
        { ...depth, has: '0' },
        { ...tail, has: '-0.1' },
        { ...share, has: '0' },
      ],
    });
    const none = strapping([liftedPanel()], { strapTailM: '0' });
    expect(none).toEqual({ ok: false, problems: [{ ...tail, has: '0' }] });
    const over = strapping([liftedPanel()], { sidewaysShare: '1.001' });
    expect(over).toEqual({ ok: false, problems: [{ ...share, has: '1.001' }] });
    const negative = strapping([liftedPanel()], { lifterDepthM: '-1', sidewaysShare: '-0.5' });
    expect(negative).toEqual({
      ok: false,
      problems: [
        { ...depth, has: '-1' },
        { ...share, has: '-0.5' },
      ],
    });
  });

  it.each([
    { sidewaysShare: '1' },
    { sidewaysShare: '0.001' },
    { strapTailM: '0.001' },
    { lifterDepthM: '0.001' },
  ])('take a figure just inside its limits: %o', (words) => {
    expect(strapping([liftedPanel()], words).ok).toBe(true);
  });

  it('hold at least the weight of every panel, and never less for a heavier or larger one', () => {
    const random = seededRandom(72);
    const keys = ['underRailForceN', 'roundWidthForceN', 'underRailLengthM', 'roundWidthLengthM'] as const;
    for (let round = 0; round < 500; round += 1) {
      const panels = somePanels(random);
      const share = random.whole(1, 999) / 1000;
      const words = { sidewaysShare: String(share) };
      const result = strapping(panels, words);
      const more = strapping([...panels, ...somePanels(random)], words);
      for (const key of keys) expect(figuresOf(more, key)).toBeGreaterThanOrEqual(figuresOf(result, key));
      const steeper = strapping(panels, { sidewaysShare: String((share * 1000 + 1) / 1000) });
      expect(figuresOf(steeper, 'roundWidthForceN')).toBeGreaterThan(figuresOf(result, 'roundWidthForceN'));
      for (const { massKg, heightM, widthM } of panels) {
        const weight = massKg.toNumber() * 9.80665;
        expect(2 * figuresOf(result, 'underRailForceN')).toBeGreaterThanOrEqual(weight - 1e-6);
        expect(2 * figuresOf(result, 'roundWidthForceN')).toBeGreaterThanOrEqual(weight * share - 1e-6);
        expect(figuresOf(result, 'underRailLengthM')).toBeGreaterThan(heightM.toNumber());
        expect(figuresOf(result, 'roundWidthLengthM')).toBeGreaterThan(2 * widthM.toNumber());
      }
    }
  });
});

// Published rules of lashing: test/golden/lashing.yaml.
describe('published rules of lashing', () => {
  it.each(lashing.directPull)('$source: holds $holdsKg kg on two straps, and not $notKg kg', (row) => {
    const { value, unit } = row.lashingCapacity;
    const capacity = toSi(value, unit).value.toNumber();
    const asked = (massKg: string) => figuresOf(strapping([liftedPanel({ massKg })]), 'underRailForceN');
    expect(asked(row.holdsKg)).toBeLessThanOrEqual(capacity);
    expect(asked(row.notKg)).toBeGreaterThan(capacity);
  });

  it.each(lashing.sideways)('$source: the pair round the width holds $share of the weight', ({ share }) => {
    const result = strapping([liftedPanel({ massKg: '1000' })], { sidewaysShare: share });
    expect(2 * figuresOf(result, 'roundWidthForceN')).toBeCloseTo(1000 * 9.80665 * Number(share), 6);
  });

  it.each(lashing.together)('$source: no less is asked of the straps together', ({ leastShare }) => {
    const result = strapping([liftedPanel({ massKg: '500' })]);
    const together = 2 * figuresOf(result, 'underRailForceN') + 2 * figuresOf(result, 'roundWidthForceN');
    const weight = massAsForce(Exact.of('500')).force.toNumber();
    expect(together).toBeGreaterThanOrEqual(weight * Number(leastShare));
  });

  it.each(lashing.conversions)('$value $from is $printed $to ($source)', ({ value, from, to, printed }) => {
    const places = printed.split('.')[1]?.length ?? 0;
    const converted = convert(value, from, to, { places: 15, rounding: 'down' });
    expect(Math.abs(converted.toNumber() - Number(printed))).toBeLessThanOrEqual(0.5 * 10 ** -places);
  });
});
