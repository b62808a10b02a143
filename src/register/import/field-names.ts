import { FIELD_NAMES, FIELDS, type Field } from './fields.js';

/** What a field is called on the page. */
export function fieldName(field: Field): string {
  const known = FIELDS.find((candidate) => candidate === field);
  return known ? FIELD_NAMES[known] : field.slice('size.'.length);
}
