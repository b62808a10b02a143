import { isPlain } from '../http/plain-text.js';
import type { FieldError } from '../problem.js';
import { isDay } from '../rules/calendar/day.js';
import type { ItemInput } from './item-input.js';

const LONGEST_OWNER = 120;

/** Whether the days of a hire exist, follow each other, and say whose the item is. They may lie ahead. */
export function checkHire(input: ItemInput): FieldError[] {
  const errors = [...checkDays(input), ...checkOwner(input)];
  const { hiredFrom, hiredTo } = input;
  const isSwapped = hiredFrom !== undefined && hiredTo !== undefined && hiredTo < hiredFrom;
  if (errors.length > 0 || !isSwapped) return errors;
  return [{ field: 'hiredTo', message: `is before the first day of the hire, ${hiredFrom}` }];
}

function checkDays({ hiredFrom, hiredTo }: ItemInput): FieldError[] {
  return Object.entries({ hiredFrom, hiredTo })
    .filter(([, day]) => day !== undefined && !isDay(day))
    .map(([field]) => ({ field, message: 'write a day that exists as YYYY-MM-DD' }));
}

function checkOwner({ owner, hiredFrom, hiredTo }: ItemInput): FieldError[] {
  const name = owner?.trim() ?? '';
  const isHired = hiredFrom !== undefined || hiredTo !== undefined;
  if (name === '' && isHired)
    return [{ field: 'owner', message: 'write whose it is: what is hired goes back to its owner' }];
  if (name.length <= LONGEST_OWNER && isPlain(name, { lines: false })) return [];
  return [{ field: 'owner', message: `write whose it is on one line, at most ${LONGEST_OWNER} characters` }];
}
