import { applyDecorators } from '@nestjs/common';
import { Transform } from 'class-transformer';
import { scannedTag } from '../rules/text/scanned-tag.js';
import { PlainText } from './plain-text.js';

/** The tag of an item as it was typed, or as a scanner read it off the label: an address that ends in the tag. */
export function TagText({ what, most = 40 }: { what: string; most?: number }): PropertyDecorator {
  return applyDecorators(
    Transform(({ value }: { value: unknown }) => (typeof value === 'string' ? scannedTag(value) : value)),
    PlainText({ most, what }),
  );
}
