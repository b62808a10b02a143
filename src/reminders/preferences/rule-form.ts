import { badInput } from '../../http/input.js';
import type { FieldError } from '../../problem.js';
import { formNumbers } from './form-numbers.js';
import { readHolidays } from './holiday-lines.js';

/** More wrong lines than these are seldom wrong in another way. */
const MOST_FAULTS_SHOWN = 5;

/**
 * The page's fields as the API takes them. A list that is left blank is an empty list, not one left out.
 * @throws Problem `bad_input` that names each line or word which cannot be read.
 */
export function ruleFields(form: Readonly<Record<string, unknown>>): Record<string, unknown> {
  const { days, faults } = readHolidays(textOf(form['holidays']));
  const leads = textOf(form['leadDays'])
    .split(/[\s,;]+/)
    .filter((word) => word !== '');
  const errors = [...holidayError(faults), ...leadError(leads)];
  if (errors.length > 0) throw badInput(errors);
  return {
    ...form,
    workDays: formNumbers(form['workDays']),
    holidays: days,
    leadDays: leads.map(Number),
    digestTime: form['digestTime'] ?? '',
  };
}

function holidayError(faults: readonly string[]): FieldError[] {
  if (faults.length === 0) return [];
  const more = faults.length - MOST_FAULTS_SHOWN;
  const shown = faults.slice(0, MOST_FAULTS_SHOWN).join('; ');
  return [{ field: 'holidays', message: more > 0 ? `${shown}; and ${more} more lines` : shown }];
}

function leadError(leads: readonly string[]): FieldError[] {
  const wrong = leads.find((word) => !/^\d{1,9}$/.test(word));
  if (wrong === undefined) return [];
  const message = `'${wrong.slice(0, 40)}' is no number of days; write them as 30, 14, 7, 1`;
  return [{ field: 'leadDays', message }];
}

function textOf(value: unknown): string {
  return typeof value === 'string' ? value : '';
}
