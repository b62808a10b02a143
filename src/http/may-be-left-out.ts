import { ValidateIf } from 'class-validator';

/** A field that may be left out, but not be null: for fields where null would say nothing else. */
export function MayBeLeftOut(): PropertyDecorator {
  return ValidateIf((_, value) => value !== undefined);
}
