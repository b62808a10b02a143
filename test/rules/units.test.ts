import fc from 'fast-check';
import Qty from 'js-quantities';
import { describe, expect, it } from 'vitest';
import { Exact } from '../../src/rules/quantities/exact.js';
import {
  convert,
  dimensionOf,
  isUnit,
  massAsForce,
  toSi,
  UNIT_SYMBOLS,
} from '../../src/rules/quantities/units.js';
import { golden } from './golden.js';

interface UnitRow {
  readonly unit: string;
  readonly si: string;
  readonly exact?: string;
  readonly printed?: string;
  readonly source: string;
}

const rows = golden<UnitRow[]>('units');

/** Rounds half up to the decimals that a printed figure has. */
function asPrinted(value: Exact, printed: string): string {
  const places = printed.split('.')[1]?.length ?? 0;
  const half = Exact.of(places === 0 ? '0.5' : `0.${'0'.repeat(places)}5`);
  return value.plus(half).rounded({ places, rounding: 'down' }).toString();
}

describe('unit factors', () => {
  it.each(rows)('$unit by $source', ({ unit, si, exact, printed }) => {
    const one = toSi('1', unit);
    expect(one.unit).toBe(si);
    if (exact !== undefined) expect(one.value.toString()).toBe(exact);
    if (printed !== undefined) expect(asPrinted(one.value, printed)).toBe(printed);
  });

  it('every unit has a published row', () => {
    expect([...new Set(rows.map(({ unit }) => unit))].sort()).toEqual([...UNIT_SYMBOLS].sort());
  });

  it('the endless lb/ft2 is rounded up at the fifteenth place, because it feeds needs', () => {
    // 0.45359237 / 0.09290304 = 4.882 427 636 383 050 54..., by long division.
    expect(toSi('1', 'lb/ft2').value.toString()).toBe('4.882427636383051');
  });

  it.each(['ton', 'tons', 'T', 'KG', '', 'toString', '__proto__'])('%j is not a unit', (unit) => {
    expect(isUnit(unit)).toBe(false);
    expect(() => toSi('1', unit)).toThrow(new RangeError(`'${unit}' is not a unit of the table`));
    expect(() => convert('1', unit, 'kg', { places: 3, rounding: 'up' })).toThrow(`'${unit}' is not a unit`);
    expect(() => convert('1', 'kg', unit, { places: 3, rounding: 'up' })).toThrow(`'${unit}' is not a unit`);
  });

  it('the value must be decimal text', () => {
    expect(() => toSi('1,5', 'kg')).toThrow(RangeError);
  });
});

describe('convert', () => {
  it('rounds a capacity down and a need up', () => {
    // NIST SP 811 B.8: 1 kg is 2.204 622 621 8... lb.
    expect(convert('1', 'kg', 'lb', { places: 6, rounding: 'down' }).toString()).toBe('2.204622');
    expect(convert('1', 'kg', 'lb', { places: 6, rounding: 'up' }).toString()).toBe('2.204623');
  });

  it('goes through units whose factor is a quotient, both ways', () => {
    const places = { places: 6, rounding: 'down' } as const;
    // 4.882 427 636 383 by long division; its inverse 0.204 816 143... likewise.
    expect(convert('1', 'lb/ft2', 'kg/m2', places).toString()).toBe('4.882427');
    expect(convert('1', 'kg/m2', 'lb/ft2', places).toString()).toBe('0.204816');
    expect(convert('7', 'lb/ft2', 'lb/ft2', places).toString()).toBe('7');
  });

  it.each([
    ['kg', 'N'],
    ['kg', 'daN'],
    ['t', 'kN'],
    ['lb', 'lbf'],
    ['m', 'kg'],
    ['kg', 'kg/m2'],
    ['persons', 'kg'],
  ])('%s is not %s', (from, to) => {
    expect(() => convert('1', from, to, { places: 3, rounding: 'down' })).toThrow(`${from} measures`);
  });
});

/** Our symbols as the general-purpose library spells them; it prints lbf to seven figures. */
const SPELT: Readonly<Record<string, string>> = {
  kg: 'kg',
  g: 'g',
  t: 'tonne',
  lb: 'lb',
  shortTon: 'short-ton',
  N: 'N',
  daN: 'daN',
  kN: 'kN',
  lbf: 'lbf',
  m: 'm',
  mm: 'mm',
  cm: 'cm',
  ft: 'ft',
  in: 'in',
  'kg/m2': 'kg/m2',
  'lb/ft2': 'lb/ft2',
};

describe('against a general-purpose library of quantities', () => {
  const amounts = fc.integer({ min: 1, max: 10_000_000 }).map((thousandths) => thousandths / 1000);
  const pairs = UNIT_SYMBOLS.flatMap((from) =>
    UNIT_SYMBOLS.filter((to) => dimensionOf(to) === dimensionOf(from)).map((to) => ({ from, to })),
  ).filter(({ from, to }) => from in SPELT && to in SPELT);

  it('agrees on every conversion to seven figures', () => {
    expect(pairs.length).toBeGreaterThan(50);
    fc.assert(
      fc.property(fc.constantFrom(...pairs), amounts, ({ from, to }, amount) => {
        const theirs = Qty(amount, SPELT[from] ?? '').to(SPELT[to] ?? '').scalar;
        const ours = convert(Exact.of(amount).toString(), from, to, {
          places: 15,
          rounding: 'down',
        }).toNumber();
        expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(Math.abs(theirs) * 1e-7 + 1e-13);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('massAsForce', () => {
  it('takes standard gravity, exact (NIST SP 811 B.8; 3rd CGPM, 1901), and shows it', () => {
    const { force, working } = massAsForce(Exact.of('450'));
    expect(force.toString()).toBe('4412.9925');
    expect(working).toEqual({
      title: 'Mass as force',
      formula: 'F = m × g',
      inputs: [
        { name: 'm', value: '450', unit: 'kg' },
        { name: 'g', value: '9.80665', unit: 'm/s2' },
      ],
      result: { name: 'F', value: '4412.9925', unit: 'N' },
      source: 'nist-sp811',
    });
  });

  it('a kilogram weighs a kilogram-force, a pound a pound-force', () => {
    expect(massAsForce(Exact.of('1')).force.compare(toSi('1', 'kgf').value)).toBe(0);
    expect(massAsForce(toSi('1', 'lb').value).force.compare(toSi('1', 'lbf').value)).toBe(0);
    expect(massAsForce(toSi('1000', 'lb').value).force.compare(toSi('1', 'kip').value)).toBe(0);
  });
});
