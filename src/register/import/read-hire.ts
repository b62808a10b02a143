import type { ItemInput } from '../item-input.js';
import { readDate } from './read-date.js';
import type { RowReader } from './row-reader.js';

/** Whose a hired item is, and the days of its hire, which may lie ahead. */
export function readHire(reader: RowReader): Pick<ItemInput, 'owner' | 'hiredFrom' | 'hiredTo'> {
  const owner = reader.text('owner');
  const [hiredFrom, hiredTo] = [readHireDay(reader, 'hiredFrom'), readHireDay(reader, 'hiredTo')];
  return { ...(owner && { owner }), ...(hiredFrom && { hiredFrom }), ...(hiredTo && { hiredTo }) };
}

function readHireDay(reader: RowReader, field: 'hiredFrom' | 'hiredTo'): string | undefined {
  const text = reader.text(field);
  if (text === undefined || /^[-–—]$/.test(text)) return undefined;
  const reading = readDate(text, reader.context.dateOrder);
  return reading.ok ? reading.day : reader.fault(field, reading.reason);
}
