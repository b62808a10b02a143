import { describe, expect, it } from 'vitest';
import type { CalculationProblem } from '../../src/rules/calculations/calculation.js';
import { Exact } from '../../src/rules/quantities/exact.js';
import { spreaderBar, type SpreaderBarInput } from '../../src/rules/unloading/spreader-bar.js';
import { liftedPanel } from './lift-panels.js';

const of = (value: string | number): Exact => Exact.of(value);

// Over half the drop spacing, 1.2 m, a leg of 2.0 m rises 1.6 m: the triangle 3, 4, 5, at 53 degrees.
const USUAL: SpreaderBarInput = {
  panels: [liftedPanel('A1'), liftedPanel('B2', { packedKg: '380', centreOffsetM: '-0.3' })],
  handlingFactor: of('1.1'),
  spreaderBarMassKg: of('60'),
  dropSpacingM: of('2.4'),
  topLegLengthM: of('2'),
  leastLegAngleDeg: '45',
};

function problems(change: Partial<SpreaderBarInput>): readonly CalculationProblem[] {
  const result = spreaderBar({ ...USUAL, ...change });
  return result.ok ? [] : result.problems;
}

function figures(change: Partial<SpreaderBarInput> = {}): Record<string, string> {
  const result = spreaderBar({ ...USUAL, ...change });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return Object.fromEntries(Object.entries(result.figures).map(([key, value]) => [key, value.toString()]));
}

describe('a spreader bar', () => {
  it('is ruled by the heaviest panel, and its slings by the one that hangs most on one of them', () => {
    // 400 × 1.1; 380 × 1.1 × (1.2 + 0.3) ÷ 2.4; (261.25 + 30) × 2 ÷ 1.6; (261.25 + 30) × 1.2 ÷ 1.6
    expect(figures()).toEqual({
      barLoadKg: '440',
      dropLoadKg: '261.25',
      topLegLoadKg: '364.0625',
      barCompressionKg: '218.4375',
    });
  });

  it('shows the arithmetic', () => {
    const result = spreaderBar(USUAL);
    if (!result.ok) throw new Error('refused');
    const spacing = { name: 'drop spacing', value: '2.4', unit: 'm' };
    const length = { name: 'leg length', value: '2', unit: 'm' };
    const rise = { name: 'rise', value: '1.6', unit: 'm' };
    const factor = { name: 'handling factor', value: '1.1', unit: '' };
    const drop = { name: 'load at the heavier drop', value: '261.25', unit: 'kg' };
    const bar = { name: 'mass of the bar', value: '60', unit: 'kg' };
    expect(result.workings).toEqual([
      {
        title: 'Panel A1: load under the spreader bar',
        formula: 'packed mass × handling factor',
        inputs: [{ name: 'packed mass', value: '400', unit: 'kg' }, factor],
        result: { name: 'load under the bar', value: '440', unit: 'kg' },
        source: 'common-practice',
        caution: "One panel at a time. The maker's plate of the bar governs, for the span that is used.",
      },
      {
        title: 'Panel B2: load at the heavier drop sling',
        formula: 'packed mass × handling factor × (drop spacing ÷ 2 + centre offset) ÷ drop spacing',
        inputs: [
          { name: 'packed mass', value: '380', unit: 'kg' },
          factor,
          spacing,
          { name: 'centre offset', value: '0.3', unit: 'm' },
        ],
        result: drop,
        source: 'common-practice',
        caution:
          'Drop slings hang straight down, at equal distances from the middle of the panel. A sling that is choked or ' +
          'laid round the panel needs its own mode factor on top.',
      },
      {
        title: 'Rise of the hook above the spreader bar',
        formula: '√(leg length² − (drop spacing ÷ 2)²)',
        inputs: [length, spacing],
        result: rise,
        source: 'common-practice',
        caution:
          'The top legs are equal and made fast above the drop slings. The load moves until its centre of gravity hangs ' +
          'under the hook: where the bar tilts, set the load down and rig it anew.',
      },
      {
        title: 'Panel B2: tension in a top leg',
        formula: '(load at the heavier drop + mass of the bar ÷ 2) × leg length ÷ rise',
        inputs: [drop, bar, length, rise],
        result: { name: 'tension in a top leg', value: '364.0625', unit: 'kg' },
        source: 'us-navy-14081',
        caution:
          'Only two legs are counted, however many there are. A leg flatter than the least angle is refused.',
      },
      {
        title: 'Panel B2: compression in the spreader bar',
        formula: '(load at the heavier drop + mass of the bar ÷ 2) × (drop spacing ÷ 2) ÷ rise',
        inputs: [drop, bar, spacing, rise],
        result: { name: 'compression in the bar', value: '218.4375', unit: 'kg' },
        source: 'common-practice',
        caution:
          "For a competent person to hold against the maker's data of the bar at this span; no gear is rated by it.",
      },
    ]);
  });

  it('takes the first of equal panels', () => {
    const result = spreaderBar({ ...USUAL, panels: [liftedPanel('first'), liftedPanel('second')] });
    const titles = result.ok ? result.workings.map(({ title }) => title) : [];
    expect(titles.filter((title) => title.startsWith('Panel first:'))).toHaveLength(4);
  });

  it('rounds what it needs up', () => {
    // 400.0000001 × 1.1 = 440.00000011
    const panels = [liftedPanel('A1', { packedKg: '400.0000001' })];
    expect(figures({ panels })).toMatchObject({ barLoadKg: '440.000001', dropLoadKg: '220.000001' });
  });

  it('allows a handling factor of 1, and a panel as long as the drops are apart', () => {
    expect(figures({ handlingFactor: of(1), panels: [liftedPanel('A1', { heightM: '2.4' })] })).toMatchObject(
      {
        barLoadKg: '400',
      },
    );
  });
});

describe('a spreader bar is refused', () => {
  const code = 'parameter_out_of_range';

  it.each([
    [{ handlingFactor: of('0.99') }, { code, subject: 'handlingFactor', needed: '1', has: '0.99' }],
    [{ handlingFactor: of('-1') }, { code, subject: 'handlingFactor', needed: '1', has: '-1' }],
    [{ spreaderBarMassKg: of('0') }, { code, subject: 'spreaderBarMassKg', has: '0', unit: 'kg' }],
    [{ spreaderBarMassKg: of('-1') }, { code, subject: 'spreaderBarMassKg', has: '-1', unit: 'kg' }],
    [{ dropSpacingM: of('0') }, { code, subject: 'dropSpacingM', has: '0', unit: 'm' }],
    [{ topLegLengthM: of('-2') }, { code, subject: 'topLegLengthM', has: '-2', unit: 'm' }],
    [{ leastLegAngleDeg: '50' }, { code, subject: 'leastLegAngleDeg', has: '50', unit: '°' }],
  ])('for a figure that cannot be %#', (change, problem) => {
    expect(problems(change)).toEqual([problem]);
  });

  it('for every such figure at once', () => {
    const nought = of(0);
    const all = {
      handlingFactor: nought,
      spreaderBarMassKg: nought,
      dropSpacingM: nought,
      topLegLengthM: nought,
      leastLegAngleDeg: 'steep',
    };
    expect(problems(all).map(({ subject }) => subject)).toEqual(Object.keys(all));
  });

  it.each([
    ['1.200001', 'leg_too_flat', '1.697057'],
    ['1.2', 'leg_too_short', '1.2'],
    ['1.1', 'leg_too_short', '1.2'],
    ['1.697056', 'leg_too_flat', '1.697057'],
  ])('for legs of %s m over a run of 1.2 m: %s', (length, code, needed) => {
    const has = { subject: 'topLegLengthM', needed, has: length, unit: 'm' };
    expect(problems({ topLegLengthM: of(length) })).toEqual([{ code, ...has }]);
  });

  it('never at its least length or, at 60 degrees, at twice the run', () => {
    expect(problems({ topLegLengthM: of('1.697057') })).toEqual([]);
    expect(problems({ topLegLengthM: of('2.4'), leastLegAngleDeg: '60' })).toEqual([]);
    expect(problems({ topLegLengthM: of('2.399999'), leastLegAngleDeg: '60' })).toMatchObject([
      { code: 'leg_too_flat', needed: '2.4' },
    ]);
  });

  it.each([
    ['1.2', [{ code: 'centre_outside_supports', subject: 'C3', needed: '1.2', has: '1.2', unit: 'm' }]],
    ['-1.3', [{ code: 'centre_outside_supports', subject: 'C3', needed: '1.2', has: '1.3', unit: 'm' }]],
    ['1.199999', []],
  ])('with the centre of gravity %s m off the middle', (centreOffsetM, expected) => {
    expect(problems({ panels: [liftedPanel('A1'), liftedPanel('C3', { centreOffsetM })] })).toEqual(expected);
  });

  it('for everything that is wrong with the geometry, panel by panel', () => {
    const short = liftedPanel('S', { heightM: '2.399', centreOffsetM: '1.2' });
    const panels = [short, liftedPanel('T', { centreOffsetM: '2' })];
    expect(problems({ panels, topLegLengthM: of('1.5') })).toEqual([
      { code: 'leg_too_flat', subject: 'topLegLengthM', needed: '1.697057', has: '1.5', unit: 'm' },
      { code: 'spacing_longer_than_panel', subject: 'S', needed: '2.399', has: '2.4', unit: 'm' },
      { code: 'centre_outside_supports', subject: 'S', needed: '1.2', has: '1.2', unit: 'm' },
      { code: 'centre_outside_supports', subject: 'T', needed: '1.2', has: '2', unit: 'm' },
    ]);
  });
});
