import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Exact } from '../../src/rules/quantities/exact.js';

const of = (value: string | number): Exact => Exact.of(value);

describe('Exact', () => {
  it.each([
    ['0', '0'],
    ['-0.0', '0'],
    ['007.50', '7.5'],
    ['-12.50', '-12.5'],
    ['0.05', '0.05'],
    ['-0.05', '-0.05'],
    ['100', '100'],
    ['12345678901234567890.123456789', '12345678901234567890.123456789'],
  ])('reads %s as %s', (text, plain) => {
    expect(of(text).toString()).toBe(plain);
  });

  it.each([
    [0.1, '0.1'],
    [-2.5, '-2.5'],
    [1e-7, '0.0000001'],
    [-1.25e-7, '-0.000000125'],
    [1e21, '1000000000000000000000'],
    [-1.5e21, '-1500000000000000000000'],
    [-0, '0'],
  ])('reads the number %d as %s', (number, plain) => {
    expect(of(number).toString()).toBe(plain);
  });

  it.each([
    '',
    ' 1',
    '1.',
    '.5',
    '1,5',
    '1e3',
    '1e+3',
    '1.5e-7',
    '+1',
    '--1',
    'NaN',
    '١',
    NaN,
    Infinity,
    -Infinity,
  ])('refuses %j', (value) => {
    expect(() => of(value)).toThrow(new RangeError(`'${value}' is not a decimal number`));
  });

  it('adds, takes away and multiplies without loss', () => {
    expect(of('0.1').plus(of('0.2')).toString()).toBe('0.3');
    expect(of('1').minus(of('0.9')).toString()).toBe('0.1');
    expect(of('-0.5').times(of('0.25')).toString()).toBe('-0.125');
    // 24 FR 5348 (1959): 1 lb is 0.453 592 37 kg, so 2 000 lb are 907.184 74 kg.
    expect(of('2000').times(of('0.45359237')).toString()).toBe('907.18474');
  });

  it.each([
    ['1', '3', 2, '0.33', '0.34'],
    ['2', '3', 0, '0', '1'],
    ['-1', '3', 2, '-0.33', '-0.34'],
    ['1', '-3', 2, '-0.33', '-0.34'],
    ['-1', '-3', 2, '0.33', '0.34'],
    ['1', '4', 2, '0.25', '0.25'],
    ['-1', '4', 2, '-0.25', '-0.25'],
    ['0', '7', 3, '0', '0'],
    ['0.001', '2', 3, '0', '0.001'],
    ['1.23456', '1', 2, '1.23', '1.24'],
    ['10', '0.003', 1, '3333.3', '3333.4'],
  ])('%s / %s to %d places is %s down and %s up', (above, below, places, down, up) => {
    expect(of(above).dividedBy(of(below), { places, rounding: 'down' }).toString()).toBe(down);
    expect(of(above).dividedBy(of(below), { places, rounding: 'up' }).toString()).toBe(up);
  });

  it('does not divide by zero', () => {
    expect(() => of('1').dividedBy(of('0.00'), { places: 2, rounding: 'up' })).toThrow(
      new RangeError('division by zero'),
    );
  });

  it.each([
    ['2.341', 'up', '2.35'],
    ['2.340', 'up', '2.34'],
    ['2.349', 'down', '2.34'],
    ['-2.341', 'up', '-2.35'],
    ['-2.349', 'down', '-2.34'],
    ['2.3', 'up', '2.3'],
  ] as const)('%s rounded %s is %s', (text, rounding, rounded) => {
    expect(of(text).rounded({ places: 2, rounding }).toString()).toBe(rounded);
  });

  // 1.414 213 562 373 095 048 8... and 1.732 050 807 568 877 2...: the roots of 2 and 3, known to everybody.
  it.each([
    ['2', 0, '1', '2'],
    ['2', 3, '1.414', '1.415'],
    ['2', 18, '1.414213562373095048', '1.414213562373095049'],
    ['3', 6, '1.73205', '1.732051'],
    ['0', 4, '0', '0'],
    ['0.0', 0, '0', '0'],
    ['1', 6, '1', '1'],
    ['25', 0, '5', '5'],
    ['24', 0, '4', '5'],
    ['26', 0, '5', '6'],
    ['6.25', 1, '2.5', '2.5'],
    ['6.25', 0, '2', '3'],
    ['6.2500000001', 1, '2.5', '2.6'],
    ['6.2499999999', 1, '2.4', '2.5'],
    ['0.0001', 2, '0.01', '0.01'],
    ['0.0001', 1, '0', '0.1'],
    ['0.000000000001', 2, '0', '0.01'],
    ['1.00', 1, '1', '1'],
    ['340282366920938463463374607431768211456', 0, '18446744073709551616', '18446744073709551616'],
  ] as const)('the root of %s to %d places is %s down and %s up', (square, places, down, up) => {
    expect(of(square).squareRoot({ places, rounding: 'down' }).toString()).toBe(down);
    expect(of(square).squareRoot({ places, rounding: 'up' }).toString()).toBe(up);
  });

  it('has no root below zero', () => {
    expect(() => of('-0.01').squareRoot({ places: 2, rounding: 'up' })).toThrow(
      new RangeError('-0.01 has no square root'),
    );
  });

  it('down and up bracket the root, one step apart at most', () => {
    const digits = fc.bigInt({ min: 0n, max: 10n ** 24n });
    fc.assert(
      fc.property(
        digits,
        fc.integer({ min: 0, max: 8 }),
        fc.integer({ min: 0, max: 6 }),
        (whole, scale, places) => {
          const square = of(whole.toString()).dividedBy(of(`1${'0'.repeat(scale)}`), {
            places: 8,
            rounding: 'down',
          });
          const down = square.squareRoot({ places, rounding: 'down' });
          const up = square.squareRoot({ places, rounding: 'up' });
          const step = of(1).dividedBy(of(`1${'0'.repeat(places)}`), { places, rounding: 'down' });
          expect(square.isLessThan(down.times(down))).toBe(false);
          expect(up.times(up).isLessThan(square)).toBe(false);
          expect(square.isLessThan(down.plus(step).times(down.plus(step)))).toBe(true);
          expect(up.minus(down).toString()).toBe(
            down.times(down).compare(square) === 0 ? '0' : step.toString(),
          );
        },
      ),
    );
  });

  it('compares across places, equality included', () => {
    expect(of('1.50').compare(of('1.5'))).toBe(0);
    expect(of('1.5').isLessThan(of('1.50'))).toBe(false);
    expect(of('1.4999999999999999999').isLessThan(of('1.5'))).toBe(true);
    expect(of('1.5000000000000000001').compare(of('1.5'))).toBeGreaterThan(0);
    expect(of('-2').isLessThan(of('-1'))).toBe(true);
    expect(of('-0').isNegative()).toBe(false);
    expect(of('-0.01').isNegative()).toBe(true);
    expect(of('0.00').isZero()).toBe(true);
    expect(of('0.01').isZero()).toBe(false);
    expect(of('1496.854821').toNumber()).toBe(1496.854821);
  });

  it('agrees with whole-number arithmetic on scaled integers', () => {
    const whole = fc.bigInt({ min: -(10n ** 20n), max: 10n ** 20n });
    fc.assert(
      fc.property(whole, whole, (a, b) => {
        expect(of(a.toString()).plus(of(b.toString())).toString()).toBe((a + b).toString());
        expect(of(a.toString()).minus(of(b.toString())).toString()).toBe((a - b).toString());
        expect(of(a.toString()).times(of(b.toString())).toString()).toBe((a * b).toString());
        expect(Math.sign(of(a.toString()).compare(of(b.toString())))).toBe(a < b ? -1 : a > b ? 1 : 0);
      }),
    );
  });

  it('down and up bracket the quotient, one step apart at most', () => {
    const part = fc.integer({ min: -1_000_000, max: 1_000_000 });
    fc.assert(
      fc.property(
        part,
        part.filter((n) => n !== 0),
        fc.integer({ min: 0, max: 6 }),
        (a, b, places) => {
          const [above, below] = [of(a), of(b)];
          const down = above.dividedBy(below, { places, rounding: 'down' }).times(below);
          const up = above.dividedBy(below, { places, rounding: 'up' }).times(below);
          const size = (value: Exact): Exact => (value.isNegative() ? of('0').minus(value) : value);
          expect(size(above).isLessThan(size(down))).toBe(false);
          expect(size(up).isLessThan(size(above))).toBe(false);
        },
      ),
    );
  });
});
