import { applyDecorators } from '@nestjs/common';
import { ApiProperty } from '@nestjs/swagger';
import { ValidateBy } from 'class-validator';
import { Temporal } from 'temporal-polyfill';

/** With its offset from UTC, or Z; from 1900 to 2999, so that it sorts as text. */
const SHAPE = /^(19|2\d)\d\d-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d{1,9})?)?(Z|[+-]\d\d:\d\d)$/;

/** A field that holds a moment that exists, as ISO 8601 text with Z or its offset from UTC. */
export function InstantText(): PropertyDecorator {
  const message = 'write a moment as YYYY-MM-DDThh:mm:ssZ, or with its offset from UTC';
  return applyDecorators(
    ApiProperty({ type: String, format: 'date-time', example: '2026-11-25T07:30:00Z' }),
    ValidateBy({
      name: 'instantText',
      validator: {
        validate: (value) => typeof value === 'string' && SHAPE.test(value) && exists(value),
        defaultMessage: () => message,
      },
    }),
  );
}

function exists(text: string): boolean {
  try {
    Temporal.Instant.from(text);
    return true;
  } catch {
    return false;
  }
}
