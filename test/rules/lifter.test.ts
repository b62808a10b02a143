import { describe, expect, it } from 'vitest';
import { lifter } from '../../src/rules/lifting/lifter.js';
import { Exact } from '../../src/rules/quantities/exact.js';
import { seededRandom } from '../support/seeded-random.js';
import { figuresOf, liftedPanel, somePanels } from './lifted-panels.js';

describe('a panel lifter', () => {
  const heavy = liftedPanel({ name: 'heavy', massKg: '512.5' });
  const thick = liftedPanel({ name: 'thick', thicknessM: '0.1505' });
  const thin = liftedPanel({ name: 'thin', thicknessM: '0.096' });

  it('carries the heaviest bare panel, opens to the thickest and closes on the thinnest', () => {
    const result = lifter({ panels: [thin, heavy, thick], handlingFactor: Exact.of('1.25') });
    // 512.5 kg × 1.25 = 640.625 kg; 150.5 mm − 96 mm = 54.5 mm, by hand.
    expect(result).toEqual({
      ok: true,
      figures: {
        lifterLoadKg: expect.anything(),
        thickestMm: expect.anything(),
        thinnestMm: expect.anything(),
      },
      workings: [
        {
          title: 'Panel heavy: heaviest lift',
          formula: 'mass × handling factor',
          inputs: [
            { name: 'mass', value: '512.5', unit: 'kg' },
            { name: 'handling factor', value: '1.25', unit: '' },
          ],
          result: { name: 'heaviest lift', value: '640.625', unit: 'kg' },
          source: 'common-practice',
          caution:
            'The panel is taken bare: packing left on counts as load. Strap the panel to the lifter before it leaves the ground.',
        },
        {
          title: 'Panel thick: thickest panel',
          formula: 'thickest panel',
          inputs: [{ name: 'thickest panel', value: '150.5', unit: 'mm' }],
          result: { name: 'opening of the jaw, at least', value: '150.5', unit: 'mm' },
          source: 'common-practice',
        },
        {
          title: 'Panel thin: thinnest panel',
          formula: 'thinnest panel',
          inputs: [{ name: 'thinnest panel', value: '96', unit: 'mm' }],
          result: { name: 'smallest opening of the jaw, at most', value: '96', unit: 'mm' },
          source: 'common-practice',
        },
      ],
    });
    expect(figuresOf(result, 'lifterLoadKg')).toBe(640.625);
    expect(figuresOf(result, 'thickestMm')).toBe(150.5);
    expect(figuresOf(result, 'thinnestMm')).toBe(96);
  });

  it('takes a handling factor of 1, and none under it', () => {
    const at = (factor: string) => lifter({ panels: [heavy], handlingFactor: Exact.of(factor) });
    expect(figuresOf(at('1'), 'lifterLoadKg')).toBe(512.5);
    expect(figuresOf(at('1.000001'), 'lifterLoadKg')).toBeGreaterThan(512.5);
    const problem = { code: 'parameter_out_of_range', subject: 'handlingFactor', needed: '1' };
    expect(at('0.999')).toEqual({ ok: false, problems: [{ ...problem, has: '0.999' }] });
    expect(at('-2')).toEqual({ ok: false, problems: [{ ...problem, has: '-2' }] });
  });

  it('names the first of equals', () => {
    const twins = [liftedPanel({ name: 'first' }), liftedPanel({ name: 'second' })];
    const result = lifter({ panels: twins, handlingFactor: Exact.of('1') });
    expect(result.ok && result.workings.map(({ title }) => title)).toEqual([
      'Panel first: heaviest lift',
      'Panel first: thickest panel',
      'Panel first: thinnest panel',
    ]);
  });

  it('rounds the need up at the sixth place', () => {
    const panels = [liftedPanel({ massKg: '100.0000001' })];
    expect(figuresOf(lifter({ panels, handlingFactor: Exact.of('1') }), 'lifterLoadKg')).toBe(100.000001);
  });

  it('holds every panel of a schedule, and never needs less for a heavier panel or a greater factor', () => {
    const random = seededRandom(71);
    for (let round = 0; round < 500; round += 1) {
      const panels = somePanels(random);
      const factor = random.whole(1000, 1500);
      const need = (more: typeof panels, thousandths: number) =>
        lifter({ panels: [...panels, ...more], handlingFactor: Exact.of(thousandths / 1000) });
      const load = figuresOf(need([], factor), 'lifterLoadKg');
      for (const { massKg, thicknessM } of panels) {
        expect(load).toBeGreaterThanOrEqual(massKg.toNumber());
        const thicknessMm = thicknessM.toNumber() * 1000;
        expect(figuresOf(need([], factor), 'thickestMm')).toBeGreaterThanOrEqual(thicknessMm - 1e-9);
        expect(figuresOf(need([], factor), 'thinnestMm')).toBeLessThanOrEqual(thicknessMm + 1e-9);
      }
      expect(figuresOf(need(somePanels(random), factor), 'lifterLoadKg')).toBeGreaterThanOrEqual(load);
      expect(figuresOf(need([], factor + 1), 'lifterLoadKg')).toBeGreaterThan(load);
    }
  });
});
