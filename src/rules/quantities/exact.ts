/**
 * An exact decimal number. Ratings and needs are compared as such, so that equality passes and no rounding
 * ever lets a lesser rating through. 1 lb is 0.453 592 37 kg to the last digit, and stays so.
 *
 * Example: `Exact.of('3300').times(Exact.of('0.45359237')).toString()` gives `'1496.854821'`.
 */
export class Exact {
  private constructor(
    /** The number times 10 to the power of `places`. */
    private readonly digits: bigint,
    private readonly places: number,
  ) {}

  /**
   * Reads plain decimal text such as `'-12.50'`, or a finite number by its shortest decimal form.
   * @throws RangeError for anything else: empty text, exponents, NaN, infinities, grouping marks.
   */
  static of(value: string | number): Exact {
    const match = /^(-?)(\d+)(?:\.(\d+))?$/.exec(typeof value === 'number' ? plainText(value) : value);
    if (!match) throw new RangeError(`'${value}' is not a decimal number`);
    const fraction = match[3] ?? '';
    const digits = BigInt(match[2] + fraction);
    return new Exact(match[1] ? -digits : digits, fraction.length);
  }

  plus(other: Exact): Exact {
    const places = Math.max(this.places, other.places);
    return new Exact(this.scaledTo(places) + other.scaledTo(places), places);
  }

  minus(other: Exact): Exact {
    return this.plus(new Exact(-other.digits, other.places));
  }

  times(other: Exact): Exact {
    return new Exact(this.digits * other.digits, this.places + other.places);
  }

  /**
   * Divides to `places` decimals; what does not fit is rounded the named way, `'up'` being away from zero.
   * Needs round up and capacities down, so that neither flatters the gear.
   * @throws RangeError when `other` is zero.
   */
  dividedBy(other: Exact, { places, rounding }: { places: number; rounding: 'up' | 'down' }): Exact {
    if (other.digits === 0n) throw new RangeError('division by zero');
    const shift = places + other.places - this.places;
    const above = shift >= 0 ? this.digits * 10n ** BigInt(shift) : this.digits;
    const below = shift >= 0 ? other.digits : other.digits * 10n ** BigInt(-shift);
    const quotient = above / below;
    if (rounding === 'down' || quotient * below === above) return new Exact(quotient, places);
    return new Exact(quotient + (above < 0n === below < 0n ? 1n : -1n), places);
  }

  /** Rounds to `places` decimals, `'up'` being away from zero. */
  rounded({ places, rounding }: { places: number; rounding: 'up' | 'down' }): Exact {
    return places >= this.places ? this : this.dividedBy(ONE, { places, rounding });
  }

  /**
   * The square root to `places` decimals; what does not fit is rounded the named way.
   *
   * Example: `Exact.of('2').squareRoot({ places: 3, rounding: 'up' }).toString()` gives `'1.415'`.
   * @throws RangeError below zero.
   */
  squareRoot({ places, rounding }: { places: number; rounding: 'up' | 'down' }): Exact {
    if (this.isNegative()) throw new RangeError(`${this.toString()} has no square root`);
    const square = this.rounded({ places: 2 * places, rounding }).scaledTo(2 * places);
    const root = wholeRoot(square);
    return new Exact(rounding === 'down' || root * root === square ? root : root + 1n, places);
  }

  /** Negative, zero or positive as this is less than, equal to or greater than `other`. */
  compare(other: Exact): number {
    const places = Math.max(this.places, other.places);
    const difference = this.scaledTo(places) - other.scaledTo(places);
    return difference < 0n ? -1 : difference > 0n ? 1 : 0;
  }

  isLessThan(other: Exact): boolean {
    return this.compare(other) < 0;
  }

  isZero(): boolean {
    return this.digits === 0n;
  }

  isNegative(): boolean {
    return this.digits < 0n;
  }

  /** The nearest floating-point number: for drawing and sorting, never for a verdict. */
  toNumber(): number {
    return Number(this.toString());
  }

  /** Plain decimal text without trailing zeros, such as `'1496.854821'`. */
  toString(): string {
    const sign = this.digits < 0n ? '-' : '';
    const text = (this.digits < 0n ? -this.digits : this.digits).toString().padStart(this.places + 1, '0');
    const whole = text.slice(0, text.length - this.places);
    const fraction = text.slice(text.length - this.places).replace(/0+$/, '');
    return sign + whole + (fraction ? `.${fraction}` : '');
  }

  private scaledTo(places: number): bigint {
    return this.digits * 10n ** BigInt(places - this.places);
  }
}

const ONE = Exact.of('1');

/** The greatest whole number whose square is not over `square`: Newton's steps from above, which only ever go down. */
function wholeRoot(square: bigint): bigint {
  if (square === 0n) return square;
  let root = 1n << BigInt(Math.ceil(square.toString(2).length / 2));
  for (;;) {
    const next = (root + square / root) / 2n;
    if (next >= root) return root;
    root = next;
  }
}

/** The shortest decimal form of a number, without an exponent; NaN and infinities come out as words that `of` refuses. */
function plainText(value: number): string {
  const text = String(value);
  const match = /^(-?)(\d)(?:\.(\d+))?e([+-]\d+)$/.exec(text);
  if (!match) return text;
  const [sign, digits, exponent] = [match[1] ?? '', (match[2] ?? '') + (match[3] ?? ''), Number(match[4])];
  if (exponent < 0) return `${sign}0.${'0'.repeat(-exponent - 1)}${digits}`;
  return sign + digits.padEnd(exponent + 1, '0');
}
