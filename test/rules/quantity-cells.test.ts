import { describe, expect, it } from 'vitest';
import { parseQuantity } from '../../src/rules/quantities/parse-quantity.js';
import { detectDecimalMark, readNumber, type DecimalMark } from '../../src/rules/quantities/read-number.js';
import { golden } from './golden.js';

interface ReadRow {
  readonly cell: string;
  readonly mark: DecimalMark;
  readonly value: string;
  readonly unit: string;
  readonly hint?: string;
}

interface RefusedRow {
  readonly cell: string;
  readonly mark: DecimalMark;
  readonly reason: string;
}

const { read, refused } = golden<{ read: ReadRow[]; refused: RefusedRow[] }>('quantity-cells');

describe('parseQuantity', () => {
  it.each(read)('reads $cell under $mark', ({ cell, mark, value, unit, hint }) => {
    expect(parseQuantity(cell, { decimalMark: mark })).toEqual({
      ok: true,
      value,
      unit,
      assumedUnit: false,
      ...(hint === undefined ? {} : { measureHint: hint }),
    });
  });

  it.each(refused)('refuses $cell under $mark as $reason', ({ cell, mark, reason }) => {
    expect(parseQuantity(cell, { decimalMark: mark })).toMatchObject({ ok: false, reason });
  });

  it('takes the default unit only for a cell that names none, and says so', () => {
    const options = { decimalMark: 'point', defaultUnit: 'm' } as const;
    expect(parseQuantity('9.0', options)).toEqual({ ok: true, value: '9', unit: 'm', assumedUnit: true });
    expect(parseQuantity('9.0 ft', options)).toEqual({
      ok: true,
      value: '9',
      unit: 'ft',
      assumedUnit: false,
    });
    expect(parseQuantity('9 cubits', options)).toMatchObject({
      ok: false,
      reason: 'unknown_unit',
      part: 'cubits',
    });
  });

  it('reads no-break and thin spaces as spaces', () => {
    const options = { decimalMark: 'unknown' } as const;
    expect(parseQuantity('2\u00a0500\u202fdaN', options)).toMatchObject({
      ok: true,
      value: '2500',
      unit: 'daN',
    });
  });

  it('takes sixty signs and no more for a quantity', () => {
    const options = { decimalMark: 'point' } as const;
    expect(parseQuantity(`${'0'.repeat(57)}5 t`, options)).toMatchObject({ ok: true, value: '5' });
    expect(parseQuantity(`${'0'.repeat(58)}5 t`, options)).toMatchObject({
      ok: false,
      reason: 'not_a_quantity',
    });
  });
});

describe('readNumber', () => {
  it.each(['', '.', '5.', ' ', '1 ', '--', '1e3', '1..5'])('%j is no number', (text) => {
    expect(readNumber(text, 'point')).toBeUndefined();
    expect(readNumber(text, 'unknown')).toBeUndefined();
  });
});

describe('detectDecimalMark', () => {
  it('takes the marks of cells that can only be read one way', () => {
    expect(detectDecimalMark(['2,500 daN', '2.5 t LC', '9.0', 'see label'])).toBe('point');
    expect(detectDecimalMark(['0,75 t', '1.500 kg', '8,5 m'])).toBe('comma');
    expect(detectDecimalMark(['1,234,567 g'])).toBe('point');
    expect(detectDecimalMark(['1.234,5'])).toBe('comma');
    expect(detectDecimalMark(['5.5 kg/m2'])).toBe('point');
  });

  it('is unknown where nothing tells, or cells disagree', () => {
    expect(detectDecimalMark([])).toBe('unknown');
    expect(detectDecimalMark(['2,500 daN', '450kg', '1.500 kg'])).toBe('unknown');
    expect(detectDecimalMark(['8.5 m', '0,75 t'])).toBe('unknown');
    expect(detectDecimalMark(['02.12.2025', '1,23,456'])).toBe('unknown');
  });
});
