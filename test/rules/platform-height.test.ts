import { describe, expect, it } from 'vitest';
import { platformHeight } from '../../src/rules/platform/platform-height.js';
import { Exact } from '../../src/rules/quantities/exact.js';
import { seededRandom } from '../support/seeded-random.js';
import { figuresOf, liftedPanel, somePanels } from './lifted-panels.js';

describe('the height of a work platform', () => {
  const panels = [liftedPanel(), liftedPanel({ name: 'tall', heightM: '9.1' }), liftedPanel()];
  const above = (platformReachM: string) =>
    platformHeight({ panels, platformReachM: Exact.of(platformReachM) });

  it('is what the tallest panel lies above the reach of the crew', () => {
    const result = above('1.8');
    expect(result.ok && result.workings).toEqual([
      {
        title: 'Panel tall: height of the platform',
        formula: 'height − reach, at least 0',
        inputs: [
          { name: 'height', value: '9.1', unit: 'm' },
          { name: 'reach', value: '1.8', unit: 'm' },
        ],
        result: { name: 'height of the platform', value: '7.3', unit: 'm' },
        source: 'common-practice',
        caution:
          'Compare it with the height of the platform floor: a working height as makers state it has a reach in it already.',
      },
    ]);
    expect(figuresOf(result, 'platformHeightM')).toBe(7.3);
  });

  it.each([
    ['9.099', 0.001],
    ['9.1', 0],
    ['9.101', 0],
    ['0', 9.1],
  ])('for a reach of %s m is %d m', (reach, height) => {
    expect(figuresOf(above(reach), 'platformHeightM')).toBe(height);
  });

  it('is refused for a reach below 0', () => {
    const problem = { code: 'parameter_out_of_range', subject: 'platformReachM', needed: '0', unit: 'm' };
    expect(above('-0.001')).toEqual({ ok: false, problems: [{ ...problem, has: '-0.001' }] });
  });

  it('brings the top of every panel within reach, and never sinks for a taller panel', () => {
    const random = seededRandom(74);
    for (let round = 0; round < 500; round += 1) {
      const some = somePanels(random);
      const reach = random.whole(0, 14_000) / 1000;
      const height = (more: typeof some) =>
        figuresOf(
          platformHeight({ panels: [...some, ...more], platformReachM: Exact.of(reach) }),
          'platformHeightM',
        );
      for (const { heightM } of some) {
        expect(height([]) + reach).toBeGreaterThanOrEqual(heightM.toNumber() - 1e-9);
      }
      expect(height([])).toBeGreaterThanOrEqual(0);
      expect(height(somePanels(random))).toBeGreaterThanOrEqual(height([]));
    }
  });
});
