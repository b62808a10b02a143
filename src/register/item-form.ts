import { readForm } from '../http/input.js';
import { readChartForm } from './load-chart-form.js';

/** A form's fields as the item DTOs read them, and as the form shows them again. */
export type ItemForm = Record<string, unknown>;

const TICKS = ['serialUnknown', 'acceptLookAlike', 'labelLegible', 'certificateOnFile'];
const CLEARABLE = [
  ...['serial', 'manufacturedOn', 'firstUsedOn', 'declarationOn', 'notes'],
  ...['batch', 'owner', 'hiredFrom', 'hiredTo', 'loadChart'],
];

/** Reads the form of a new item: ticks become booleans, rows left blank are dropped. */
export function readNewItemForm(fields: object): ItemForm {
  const form = readForm(fields);
  const dimensions = Object.entries(form).filter(([name]) => name.startsWith('dimensions.'));
  const rest = Object.fromEntries(
    Object.entries(form).filter(([name]) => !/^(dimensions|loadChart)\./.test(name)),
  );
  const loadChart = readChartForm(form);
  return {
    ...rest,
    ...(rest['storeId'] === undefined ? {} : { storeId: Number(rest['storeId']) }),
    ...Object.fromEntries(TICKS.map((name) => [name, rest[name] === 'true'])),
    markings: rowsWith('value', rest['markings']),
    dimensions: Object.fromEntries(
      dimensions.map(([name, value]) => [name.slice('dimensions.'.length), value]),
    ),
    writtenSchemes: rowsWith('months', rest['writtenSchemes']).map((row) => ({
      ...row,
      months: Number(row['months']),
    })),
    ...(loadChart && { loadChart }),
  };
}

/** Reads the form of a change: what was emptied is cleared. */
export function readChangedItemForm(fields: object): ItemForm {
  const form = readNewItemForm(fields);
  return { ...Object.fromEntries(CLEARABLE.map((name) => [name, null])), ...form };
}

/** The rows of a list that a form's field is filled in of. */
export function rowsWith(name: string, list: unknown): Record<string, unknown>[] {
  if (!Array.isArray(list)) return [];
  return list.filter(
    (row): row is Record<string, unknown> => typeof row === 'object' && row !== null && name in row,
  );
}
