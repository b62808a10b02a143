import { describe, expect, it } from 'vitest';
import { parseQuantity } from '../../src/rules/quantities/parse-quantity.js';
import { detectDecimalMark, readNumber, type DecimalMark } from '../../src/rules/quantities/read-number.js';
import { readUnit } from '../../src/rules/quantities/unit-words.js';
import type { UnitSymbol } from '../../src/rules/quantities/units.js';
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
    expect(parseQuantity(cell, { decimalMark: mark })).toStrictEqual({
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

  it.each([
    ['  see   label ', 'not_a_quantity', 'see label'],
    ['LC 5 t WLL', 'not_a_quantity', 'LC 5 t WLL'],
    ['500-1000 kg', 'not_a_quantity', '500-1000 kg'],
    ['500 kg = 1100 lb', 'not_a_quantity', '500 kg = 1100 lb'],
    ['MBL unknown', 'not_a_quantity', 'MBL unknown'],
    [' - ', 'blank', '-'],
    ['=600+200', 'formula', '=600+200'],
    ['SHF 50 daN', 'not_a_capacity', 'SHF 50 daN'],
    ['WLL -5 t', 'negative', '-5 t'],
    ['WLL 2,500 kg', 'ambiguous_number', '2,500'],
    ['2 tons', 'ambiguous_ton', 'tons'],
    ['2 cubits', 'unknown_unit', 'cubits'],
    ['2.5', 'unknown_unit', '2.5'],
    ['0.0 kg', 'zero', '0.0'],
    ['1001 t', 'absurd', '1001'],
  ])('of %j refused as %s names the part %j', (cell, reason, part) => {
    expect(parseQuantity(cell, { decimalMark: 'unknown' })).toEqual({ ok: false, reason, part });
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

// English and German names as stores write them: common practice, no source; which unit each means by NIST SP 811 B.8.
describe('readUnit', () => {
  it.each<[UnitSymbol, string]>([
    ['kg', 'kg, kgs, kilo, kilos, kilogram, kilograms, Kilogramm, Kg.'],
    ['g', 'g, gram, grams, Gramm'],
    ['t', 't, te, tonne, tonnes, Tonnen, metric ton, metric tons, metric tonne, metric tonnes'],
    ['lb', 'lb, lbs, lbs., LB, pound, pounds'],
    ['shortTon', 'short ton, short tons, US ton, US tons, U.S. tons'],
    ['longTon', 'long ton, long tons, UK ton, UK tons, imperial ton, imperial tons'],
    ['N', 'N, newton, newtons'],
    ['daN', 'daN, dan, decanewton, decanewtons'],
    ['kN', 'kN, kilonewton, kilonewtons'],
    ['kgf', 'kgf, kp'],
    ['lbf', 'lbf, LBF'],
    ['kip', 'kip, kips'],
    ['m', 'm, M, mtr, mtrs, metre, metres, meter, meters'],
    ['mm', 'mm, millimetre, millimetres, millimeter, millimeters'],
    ['cm', 'cm, centimetre, centimetres, centimeter, centimeters'],
    ['ft', 'ft, ft., foot, feet'],
    ['in', 'in, in., inch, inches'],
    ['persons', 'persons, person, people, pers., Personen'],
    ['kg/m2', 'kg/m2, kg/m², kg/m^2, kg/sqm, kg / m2'],
    ['lb/ft2', 'lb/ft2, lb/ft², lb/ft^2, lbs/ft2, lbs/ft², psf, lb/sqft, lb/sq.ft.'],
  ])('%s is written %s', (unit, words) => {
    for (const word of words.split(', ')) expect([word, readUnit(word)]).toEqual([word, { ok: true, unit }]);
  });

  it.each(['ton', 'tons', 'Ton', 'TONS.', 'T', ' T. '])('%j could be any of three tons', (word) => {
    expect(readUnit(word)).toEqual({ ok: false, reason: 'ambiguous_ton' });
  });

  it.each(['', 'cwt', 'TT', 'tt', 'stone', 'yard'])('%j is no unit here', (word) => {
    expect(readUnit(word)).toEqual({ ok: false, reason: 'unknown_unit' });
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
    expect(detectDecimalMark(['LC 2.5 t'])).toBe('point');
  });

  it('is unknown where nothing tells, or cells disagree', () => {
    expect(detectDecimalMark([])).toBe('unknown');
    expect(detectDecimalMark(['2,500 daN', '450kg', '1.500 kg'])).toBe('unknown');
    expect(detectDecimalMark(['8.5 m', '0,75 t'])).toBe('unknown');
    expect(detectDecimalMark(['02.12.2025', '1,23,456'])).toBe('unknown');
    expect(detectDecimalMark(['2 x 8.5 m', '8.5 to 9 m'])).toBe('unknown');
  });
});
