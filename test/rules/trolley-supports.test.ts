import { describe, expect, it } from 'vitest';
import type { CalculationProblem } from '../../src/rules/calculations/calculation.js';
import { Exact } from '../../src/rules/quantities/exact.js';
import { recommendedSpacing } from '../../src/rules/supports/recommended-spacing.js';
import { trolleySupports, type TrolleySupportsInput } from '../../src/rules/supports/trolley-supports.js';
import { seededRandom } from '../support/seeded-random.js';
import { liftedPanel } from './lift-panels.js';

const of = (value: string | number): Exact => Exact.of(value);

const USUAL: TrolleySupportsInput = {
  panels: [
    liftedPanel('B2', { heightM: '4', packedKg: '420' }),
    liftedPanel('A1', { heightM: '6', packedKg: '400', centreOffsetM: '-0.2' }),
  ],
  leastSpacingM: of('2.5'),
  greatestOverhangShare: of('0.25'),
  castorsPerTrolley: of('4'),
};

function problems(change: Partial<TrolleySupportsInput>): readonly CalculationProblem[] {
  const result = trolleySupports({ ...USUAL, ...change });
  return result.ok ? [] : result.problems;
}

function figures(change: Partial<TrolleySupportsInput> = {}): Record<string, unknown> {
  const result = trolleySupports({ ...USUAL, ...change });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  const { trolleyLoadKg, spacingM, pointLoadKg, perPanel } = result.figures;
  return {
    load: trolleyLoadKg.toString(),
    spacing: spacingM.toString(),
    point: pointLoadKg.toString(),
    perPanel: perPanel.map((each) => `${each.name} ${each.spacingM.toString()} ${each.overhangM.toString()}`),
  };
}

describe('the recommended spacing', () => {
  it.each([
    // height × 0.585786..., down to whole centimetres
    ['6', '2.5', '3.51'],
    ['7.5', '2.5', '4.39'],
    ['10', '2.5', '5.85'],
    ['9', '2.5', '5.27'],
    ['4', '2.5', '2.5'],
    ['6', '3.51', '3.51'],
    ['6', '3.52', '3.52'],
    ['6', '3.515', '3.515'],
    ['6', '3.505', '3.51'],
  ])('of a panel of %s m, not under %s m, is %s m', (height, least, spacing) => {
    expect(recommendedSpacing(of(height), of(least)).toString()).toBe(spacing);
  });
});

describe('two trolleys under a panel', () => {
  it('are ruled by the heaviest trolley, not by the heaviest panel', () => {
    // 400 × (1.755 + 0.2) ÷ 3.51 = 222.792022..., a quarter of 222.792023 = 55.69800575; (6 − 3.51) ÷ 2
    expect(figures()).toEqual({
      load: '222.792023',
      spacing: '3.51',
      point: '55.698006',
      perPanel: ['B2 2.5 0.75', 'A1 3.51 1.245'],
    });
  });

  it('stand as the job states', () => {
    // 400 × (1.6 + 0.2) ÷ 3.2 = 225
    expect(figures({ spacingM: of('3.2') })).toEqual({
      load: '225',
      spacing: '3.2',
      point: '56.25',
      perPanel: ['B2 3.2 0.4', 'A1 3.2 1.4'],
    });
  });

  it('show the arithmetic', () => {
    const result = trolleySupports({ ...USUAL, spacingM: of('3.2') });
    if (!result.ok) throw new Error('refused');
    const height = { name: 'height', value: '6', unit: 'm' };
    const spacing = { name: 'spacing', value: '3.2', unit: 'm' };
    const load = { name: 'load on the heavier trolley', value: '225', unit: 'kg' };
    expect(result.workings).toEqual([
      {
        title: 'Panel A1: recommended distance between the trolleys',
        formula: 'height × (2 − √2), down to whole centimetres, and not under the least spacing',
        inputs: [height, { name: 'least spacing', value: '2.5', unit: 'm' }],
        result: { name: 'recommended spacing', value: '3.51', unit: 'm' },
        source: 'common-practice',
        caution:
          'For a panel of even mass and stiffness: it then bends as much over the trolleys as in its middle. Support ' +
          'points that the maker of the panel states govern.',
      },
      {
        title: 'Panel A1: overhang at each end',
        formula: '(height − spacing) ÷ 2',
        inputs: [height, spacing],
        result: { name: 'overhang', value: '1.4', unit: 'm' },
        source: 'common-practice',
      },
      {
        title: 'Panel A1: load on the heavier trolley',
        formula: 'packed mass × (spacing ÷ 2 + centre offset) ÷ spacing',
        inputs: [
          { name: 'packed mass', value: '400', unit: 'kg' },
          spacing,
          { name: 'centre offset', value: '0.2', unit: 'm' },
        ],
        result: load,
        source: 'common-practice',
        caution: 'On a level floor. A slope or a threshold puts nearly all of the panel on one trolley.',
      },
      {
        title: 'Panel A1: load under one castor',
        formula: 'load on the heavier trolley ÷ castors',
        inputs: [load, { name: 'castors', value: '4', unit: '' }],
        result: { name: 'load under one castor', value: '56.25', unit: 'kg' },
        source: 'common-practice',
        caution:
          "The trolley's own mass is not in it. On an uneven floor fewer castors carry. The limit that the owner of the " +
          'floor states governs; where nobody states one, ask.',
      },
    ]);
  });

  it('take the first of equal panels', () => {
    const result = trolleySupports({ ...USUAL, panels: [liftedPanel('first'), liftedPanel('second')] });
    expect(result.ok && result.workings.every(({ title }) => title.startsWith('Panel first:'))).toBe(true);
  });
});

describe('two trolleys are refused', () => {
  const code = 'parameter_out_of_range';

  it.each([
    [{ leastSpacingM: of('0') }, { subject: 'leastSpacingM', has: '0', unit: 'm' }],
    [{ spacingM: of('0') }, { subject: 'spacingM', has: '0', unit: 'm' }],
    [{ greatestOverhangShare: of('0') }, { subject: 'greatestOverhangShare', has: '0' }],
    [
      { greatestOverhangShare: of('0.501') },
      { subject: 'greatestOverhangShare', needed: '0.5', has: '0.501' },
    ],
    [{ castorsPerTrolley: of('0') }, { subject: 'castorsPerTrolley', needed: '1', has: '0' }],
    [{ castorsPerTrolley: of('2.5') }, { subject: 'castorsPerTrolley', needed: '1', has: '2.5' }],
    [{ floorPointLimitKg: of('-1') }, { subject: 'floorPointLimitKg', has: '-1', unit: 'kg' }],
  ])('for a figure that cannot be %#', (change, problem) => {
    expect(problems(change)).toEqual([{ code, ...problem }]);
  });

  it('for every such figure at once', () => {
    const nought = of(0);
    const all = {
      leastSpacingM: nought,
      spacingM: nought,
      greatestOverhangShare: nought,
      floorPointLimitKg: nought,
      castorsPerTrolley: nought,
    };
    expect(problems(all).map(({ subject }) => subject)).toEqual(Object.keys(all));
  });

  it('but not for an overhang of half, or a single castor', () => {
    expect(figures({ greatestOverhangShare: of('0.5'), castorsPerTrolley: of('1') })).toMatchObject({
      point: '222.792023',
    });
  });

  it.each([
    ['2.5', []],
    ['2.499', [{ code: 'supports_too_close', subject: 'spacingM', needed: '2.5', has: '2.499', unit: 'm' }]],
  ])('when %s m apart', (spacing, expected) => {
    const panels = [liftedPanel('B2', { heightM: '4.9' })];
    expect(problems({ panels, spacingM: of(spacing) })).toEqual(expected);
  });

  it.each([
    ['4', []],
    ['4.001', [{ code: 'spacing_longer_than_panel', subject: 'B2', needed: '4', has: '4.001', unit: 'm' }]],
  ])('when %s m apart under a panel of 4 m', (spacing, expected) => {
    expect(problems({ spacingM: of(spacing) })).toEqual(expected);
  });

  it('when the least spacing is longer than the panel', () => {
    expect(problems({ panels: [liftedPanel('low', { heightM: '2.4' })] })).toEqual([
      { code: 'spacing_longer_than_panel', subject: 'low', needed: '2.4', has: '2.5', unit: 'm' },
    ]);
  });

  it.each([
    // A quarter of 6 m is 1.5 m, so the trolleys may stand 3 m apart and no less.
    ['3', []],
    ['2.998', [{ code: 'overhang_too_long', subject: 'A1', needed: '1.5', has: '1.501', unit: 'm' }]],
  ])('when %s m apart leave too much overhang', (spacing, expected) => {
    expect(problems({ spacingM: of(spacing) })).toEqual(expected);
  });

  it.each([
    ['1.599', []],
    ['1.6', [{ code: 'centre_outside_supports', subject: 'A1', needed: '1.6', has: '1.6', unit: 'm' }]],
    ['-1.7', [{ code: 'centre_outside_supports', subject: 'A1', needed: '1.6', has: '1.7', unit: 'm' }]],
  ])('when the centre of gravity is %s m off the middle', (centreOffsetM, expected) => {
    expect(problems({ panels: [liftedPanel('A1', { centreOffsetM })], spacingM: of('3.2') })).toEqual(
      expected,
    );
  });

  it('when the floor bears less than one castor presses', () => {
    expect(problems({ spacingM: of('3.2'), floorPointLimitKg: of('56.25') })).toEqual([]);
    expect(problems({ spacingM: of('3.2'), floorPointLimitKg: of('56.249999') })).toEqual([
      { code: 'floor_point_overloaded', subject: 'A1', needed: '56.249999', has: '56.25', unit: 'kg' },
    ]);
  });

  it('for everything at once, panel by panel', () => {
    const panels = [
      liftedPanel('low', { heightM: '1.9', packedKg: '100' }),
      liftedPanel('off', { centreOffsetM: '1', packedKg: '300' }),
    ];
    const input = { panels, spacingM: of('2'), floorPointLimitKg: of('20') };
    expect(problems(input).map(({ code, subject }) => `${subject} ${code}`)).toEqual([
      'spacingM supports_too_close',
      'low spacing_longer_than_panel',
      'off overhang_too_long',
      'off centre_outside_supports',
      'off floor_point_overloaded',
    ]);
  });
});

describe('trolleys at random', () => {
  const sorts = (list: readonly CalculationProblem[]): string[] => list.map(({ code }) => code);

  it('keep every refusal, and are asked no less, when a panel is heavier or more lopsided or its trolleys closer', () => {
    const random = seededRandom(51);
    for (let round = 0; round < 500; round++) {
      const [packed, offset, apart] = [random.whole(100, 900), random.whole(0, 20), random.whole(20, 60)];
      const input = (kg: number, off: number, m: number): TrolleySupportsInput => ({
        ...USUAL,
        panels: [liftedPanel('A1', { packedKg: String(kg), centreOffsetM: String(off / 10) })],
        spacingM: of(m / 10),
        floorPointLimitKg: of(100),
      });
      const before = trolleySupports(input(packed, offset, apart));
      const harder = [
        input(packed + 10, offset, apart),
        input(packed, offset + 1, apart),
        input(packed, offset, apart - 1),
      ].map(trolleySupports);
      for (const after of harder) {
        if (!before.ok) {
          expect(after.ok ? [] : sorts(after.problems)).toEqual(
            expect.arrayContaining(sorts(before.problems)),
          );
        } else if (after.ok) {
          expect(after.figures.trolleyLoadKg.isLessThan(before.figures.trolleyLoadKg)).toBe(false);
          expect(after.figures.pointLoadKg.isLessThan(before.figures.pointLoadKg)).toBe(false);
        }
      }
    }
  });
});
