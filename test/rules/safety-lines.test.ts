import { describe, expect, it } from 'vitest';
import { Exact } from '../../src/rules/quantities/exact.js';
import { safetyLines } from '../../src/rules/steadying/safety-lines.js';
import { seededRandom } from '../support/seeded-random.js';
import { figuresOf } from './lifted-panels.js';

const line = (liftHeightM: string, standOffM: string) =>
  safetyLines({ liftHeightM: Exact.of(liftHeightM), standOffM: Exact.of(standOffM) });

describe('a safety line', () => {
  it('is as long as the lift is high and the holder stands off', () => {
    const result = line('8.2', '3.5');
    expect(result.ok && result.workings).toEqual([
      {
        title: 'Safety line: length',
        formula: 'lift height + stand-off',
        inputs: [
          { name: 'lift height', value: '8.2', unit: 'm' },
          { name: 'stand-off', value: '3.5', unit: 'm' },
        ],
        result: { name: 'length of a safety line', value: '11.7', unit: 'm' },
        source: 'cfr-1926-1401',
        caution:
          'Longer than the slope from the panel to the hand, which is the safe side. The line steadies the load and is never fall arrest. Never wrap it round a hand or the body, and stand off from under the load.',
      },
    ]);
    expect(figuresOf(result, 'safetyLineLengthM')).toBe(11.7);
  });

  it('is refused for a height or a stand-off that is not above 0, both at once', () => {
    const height = { code: 'parameter_out_of_range', subject: 'liftHeightM', unit: 'm' };
    const standOff = { code: 'parameter_out_of_range', subject: 'standOffM', unit: 'm' };
    expect(line('0', '-1')).toEqual({
      ok: false,
      problems: [
        { ...height, has: '0' },
        { ...standOff, has: '-1' },
      ],
    });
    expect(line('8', '0')).toEqual({ ok: false, problems: [{ ...standOff, has: '0' }] });
    expect(figuresOf(line('0.001', '0.001'), 'safetyLineLengthM')).toBe(0.002);
  });

  it('reaches along the slope, and is never shorter for a higher lift or a wider stand-off', () => {
    const random = seededRandom(73);
    const metres = (millimetres: number) => String(millimetres / 1000);
    for (let round = 0; round < 500; round += 1) {
      const [height, off] = [random.whole(1, 20_000), random.whole(1, 20_000)];
      const length = figuresOf(line(metres(height), metres(off)), 'safetyLineLengthM');
      expect(length).toBeGreaterThan(Math.hypot(height, off) / 1000);
      expect(figuresOf(line(metres(height + 1), metres(off)), 'safetyLineLengthM')).toBeGreaterThan(length);
      expect(figuresOf(line(metres(height), metres(off + 1)), 'safetyLineLengthM')).toBeGreaterThan(length);
    }
  });
});
