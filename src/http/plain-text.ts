import { applyDecorators } from '@nestjs/common';
import { ApiProperty } from '@nestjs/swagger';
import { Transform } from 'class-transformer';
import { ValidateBy } from 'class-validator';

/** How long a text may be, whether on several lines, and what to write there, for the message. */
interface TextRange {
  readonly most: number;
  readonly what: string;
  readonly lines?: boolean;
}

/** A field of text that says something: trimmed, not blank, without control characters; line breaks where `lines`. */
export function PlainText({ most, what, lines = false }: TextRange): PropertyDecorator {
  const message = `write ${what}, at most ${most} characters`;
  const validate = (value: unknown) =>
    typeof value === 'string' && value !== '' && value.length <= most && isPlain(value, { lines });
  return applyDecorators(
    ApiProperty({ type: String, maxLength: most, minLength: 1 }),
    Transform(({ value }: { value: unknown }) => (typeof value === 'string' ? value.trim() : value)),
    ValidateBy({ name: 'plainText', validator: { validate, defaultMessage: () => message } }),
  );
}

/**
 * Whether text has no control characters (PostgreSQL cannot keep a NUL), no halves of characters, and nothing that turns
 * what follows around.
 */
export function isPlain(text: string, { lines }: { lines: boolean }): boolean {
  return !/[\p{Cc}\p{Cs}]/u.test(lines ? text.replace(/[\n\r\t]/g, ' ') : text) && !turnsWriting(text);
}

/**
 * Whether text embeds, overrides or isolates a direction of writing (Unicode UAX #9, section 2): unseen, it makes a serial
 * number or a line of a report read as another. The marks that text from right to left needs are not among them.
 */
export function turnsWriting(text: string): boolean {
  return /[\u202A-\u202E\u2066-\u2069]/.test(text);
}
