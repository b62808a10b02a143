import { describe, expect, it } from 'vitest';
import { compareNaturally, sortedNaturally } from '../../src/rules/allocation/natural-order.js';

describe('natural order', () => {
  it('compares runs of digits as numbers, and all else by code unit', () => {
    const tags = [
      'SL-10',
      'SL-2b',
      'sl-1',
      'SL-2',
      'SL-',
      'SL',
      'RS-300',
      'SL-2a10',
      'SL-2a9',
      '7',
      '12',
      '',
    ];
    expect(sortedNaturally(tags, (tag) => tag)).toEqual([
      '',
      '7',
      '12',
      'RS-300',
      'SL',
      'SL-',
      'SL-2',
      'SL-2a9',
      'SL-2a10',
      'SL-2b',
      'SL-10',
      'sl-1',
    ]);
  });

  it('compares numbers longer than a double holds, and zero', () => {
    expect(compareNaturally('T9007199254740993', 'T9007199254740992')).toBeGreaterThan(0);
    expect(compareNaturally('T0', 'T1')).toBeLessThan(0);
    expect(compareNaturally('T00', 'T1')).toBeLessThan(0);
  });

  it('puts texts that differ only in leading zeros in plain order, whichever way round', () => {
    expect(compareNaturally('SL-01', 'SL-1')).toBeLessThan(0);
    expect(compareNaturally('SL-1', 'SL-01')).toBeGreaterThan(0);
    expect(compareNaturally('SL-1', 'SL-1')).toBe(0);
    expect(sortedNaturally(['SL-1', 'SL-01', 'SL-001'], (tag) => tag)).toEqual(['SL-001', 'SL-01', 'SL-1']);
    expect(sortedNaturally(['SL-2', 'SL-01'], (tag) => tag)).toEqual(['SL-01', 'SL-2']);
  });

  it('agrees with the numeric collation of the Unicode CLDR (Intl.Collator) on tags of one case', () => {
    const collator = new Intl.Collator('en', { numeric: true });
    const tags = [1, 2, 9, 10, 11, 99, 100, 101, 1000].flatMap((number) => [
      `SL-${number}`,
      `RS-${number}-7`,
    ]);
    expect(sortedNaturally(tags, (tag) => tag)).toEqual([...tags].sort(collator.compare));
  });
});
