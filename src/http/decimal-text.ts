import { applyDecorators } from '@nestjs/common';
import { ApiProperty } from '@nestjs/swagger';
import { Transform } from 'class-transformer';
import { ValidateBy } from 'class-validator';
import { Exact } from '../rules/quantities/exact.js';

/** Which decimals a field takes. `above` is exclusive, `atMost` inclusive. */
interface DecimalRange {
  readonly above?: string;
  readonly atLeast?: string;
  readonly atMost: string;
  /** What to write there, for the message. */
  readonly what: string;
}

/**
 * A field of exact decimal text such as `'7450'` or `'52.5'`. A JSON number is taken by its shortest decimal
 * form; the decimal mark is a point. NaN, exponents, signs without digits and grouping marks are refused.
 */
export function DecimalText(range: DecimalRange): PropertyDecorator {
  const limits = [
    range.above === undefined ? '' : `more than ${range.above}`,
    range.atLeast === undefined ? '' : `at least ${range.atLeast}`,
    `at most ${range.atMost}`,
  ];
  const message = `write ${range.what} as a plain decimal number, ${limits.filter(Boolean).join(' and ')}`;
  return applyDecorators(
    ApiProperty({ type: String, example: '12.5', description: message }),
    Transform(({ value }: { value: unknown }) => (typeof value === 'number' ? numberText(value) : value)),
    ValidateBy({
      name: 'decimalText',
      validator: { validate: (value) => isWithin(value, range), defaultMessage: () => message },
    }),
  );
}

function numberText(value: number): string {
  return Number.isFinite(value) && Math.abs(value) < 1e15 ? Exact.of(value).toString() : String(value);
}

function isWithin(value: unknown, { above, atLeast, atMost }: DecimalRange): boolean {
  if (typeof value !== 'string' || !/^-?\d{1,12}(\.\d{1,9})?$/.test(value)) return false;
  const number = Exact.of(value);
  if (above !== undefined && number.compare(Exact.of(above)) <= 0) return false;
  if (atLeast !== undefined && number.isLessThan(Exact.of(atLeast))) return false;
  return number.compare(Exact.of(atMost)) <= 0;
}
