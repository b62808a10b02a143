import { applyDecorators } from '@nestjs/common';
import { ApiProperty } from '@nestjs/swagger';
import { ValidateBy } from 'class-validator';
import { isDay } from '../rules/calendar/day.js';

/** A field that holds a calendar day that exists, as `YYYY-MM-DD`. */
export function DayText(): PropertyDecorator {
  const message = 'write a day that exists as YYYY-MM-DD';
  return applyDecorators(
    ApiProperty({ type: String, format: 'date', example: '2026-11-25' }),
    ValidateBy({
      name: 'dayText',
      validator: {
        validate: (value) => typeof value === 'string' && isDay(value),
        defaultMessage: () => message,
      },
    }),
  );
}
