import { applyDecorators } from '@nestjs/common';
import { ApiProperty } from '@nestjs/swagger';
import { Transform } from 'class-transformer';
import { ValidateBy } from 'class-validator';
import { domainToASCII } from 'node:url';

/** RFC 5321, 4.5.3.1: the longest part before the @, and the longest address (a path of 256 less its brackets). */
const MOST_LOCAL = 64;
const MOST = 254;

/** `Dot-string` of RFC 5321, 4.1.2. Quoted ones are legal too, but nobody is given one, and they hide line breaks. */
const LOCAL = /^[\w!#$%&'*+/=?^`{|}~-]+(\.[\w!#$%&'*+/=?^`{|}~-]+)*$/;

/** Labels of RFC 1123, 2.1, at least two: a bare machine name is nearly always a slip. */
const DOMAIN = /^(?=.{4,253}$)([a-z\d]([a-z\d-]{0,61}[a-z\d])?\.)+[a-z\d]([a-z\d-]{0,61}[a-z\d])$/;

/** Nobody can write to the numbers of a machine by accident. */
const ALL_DIGITS_END = /\.\d+$/;

/**
 * One bare address as it is kept, or undefined of anything else: no name beside it, no list, no quotes, no line breaks.
 * Before the @ it is ASCII, as not every mail server takes more (RFC 6531). An international domain is kept in its
 * ASCII form (RFC 5890). The domain is in lower case; what is before the @ stays as it is written (RFC 5321, 2.4).
 */
export function bareAddress(text: string): string | undefined {
  const at = text.lastIndexOf('@');
  const local = text.slice(0, Math.max(at, 0));
  if (!LOCAL.test(local) || local.length > MOST_LOCAL) return undefined;
  const domain = asciiDomain(text.slice(at + 1));
  if (domain === undefined) return undefined;
  const address = `${local}@${domain}`;
  return address.length <= MOST ? address : undefined;
}

function asciiDomain(text: string): string | undefined {
  // The conversion is as lenient as a browser's: what it would mend in silence is refused before.
  if (!/^[\p{L}\p{N}\p{M}.-]+$/u.test(text)) return undefined;
  const domain = domainToASCII(text);
  return DOMAIN.test(domain) && !ALL_DIGITS_END.test(domain) ? domain : undefined;
}

/** A field that holds one bare mail address; null for none. */
export function MailAddressText(): PropertyDecorator {
  const message = 'write one address such as ines@yard.example, without a name beside it';
  return applyDecorators(
    ApiProperty({
      type: String,
      nullable: true,
      required: false,
      maxLength: MOST,
      example: 'ines@yard.example',
    }),
    Transform(({ value }: { value: unknown }) =>
      typeof value === 'string' ? (bareAddress(value) ?? value) : value,
    ),
    ValidateBy({
      name: 'mailAddress',
      validator: {
        validate: (value) =>
          value === null || (typeof value === 'string' && bareAddress(value) !== undefined),
        defaultMessage: () => message,
      },
    }),
  );
}
