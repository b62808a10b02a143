import { Problem, type FieldError } from '../problem.js';
import { Exact } from '../rules/quantities/exact.js';
import { parseQuantity, type QuantityRefusal } from '../rules/quantities/parse-quantity.js';
import { detectDecimalMark, type DecimalMark } from '../rules/quantities/read-number.js';
import { dimensionOf, toSi } from '../rules/quantities/units.js';
import { isBlank, type Cell, type Table, type TableRow } from '../register/import/table.js';
import type { PanelRow } from './job-parts.js';
import { DIMENSION_OF_COLUMN, readHeading, type PanelColumn, type ReadHeading } from './panel-columns.js';

/** The rows that could be read, and everything that could not, by the line of the file. */
export interface PanelScheduleReading {
  readonly panels: readonly PanelRow[];
  readonly problems: readonly FieldError[];
}

const NEEDED: readonly PanelColumn[] = ['name', 'heightMm', 'widthMm', 'thicknessMm', 'count'];

const COLUMN_NAMES: Readonly<Record<PanelColumn, string>> = {
  name: 'panel',
  heightMm: 'height',
  widthMm: 'width',
  thicknessMm: 'thickness',
  massKg: 'mass',
  arealMassKgPerM2: 'mass per area',
  fittingsKg: 'fittings',
  centreOffsetMm: 'centre of gravity',
  packingKg: 'packing',
  count: 'quantity',
};

/**
 * Reads a panel schedule from a table with units in its headings or cells. Lengths come out in mm, masses in kg, exact.
 * A cell that could be read in two ways is a problem and no guess.
 * @throws Problem `unreadable_file` when it is no table or a needed column is missing.
 */
export function readPanelSchedule(table: Table): PanelScheduleReading {
  const [headings, ...records] = table.rows.filter((row) => !isBlank(row));
  const columns = readColumns(headings?.cells.map(({ text }) => text) ?? []);
  const written = records.flatMap(({ cells }) => cells.filter(({ is }) => is !== 'number'));
  const mark = detectDecimalMark(written.map(({ text }) => text));
  const read = records.map((row) => readRow(row, { columns, mark }));
  return {
    panels: read.flatMap(({ panel }) => panel ?? []),
    problems: read.flatMap(({ problems }) => problems),
  };
}

function readColumns(headings: readonly string[]): (ReadHeading | undefined)[] {
  const columns = headings.map(readHeading);
  const found = columns.flatMap((heading) => heading?.column ?? []);
  const twice = found.filter((column, index) => found.indexOf(column) < index);
  if (twice.length > 0) {
    throw new Problem(
      'unreadable_file',
      `Two columns read as ${twice.map((column) => COLUMN_NAMES[column]).join(', ')}; rename one.`,
    );
  }
  const missing = NEEDED.filter((column) => !found.includes(column)).map((column) => COLUMN_NAMES[column]);
  if (!found.includes('massKg') && !found.includes('arealMassKgPerM2')) missing.push('mass');
  if (missing.length > 0) throw new Problem('unreadable_file', `No column reads as ${missing.join(', ')}.`);
  return columns;
}

interface RowContext {
  readonly columns: readonly (ReadHeading | undefined)[];
  readonly mark: DecimalMark;
}

function readRow(
  { cells, number: line }: TableRow,
  { columns, mark }: RowContext,
): { panel?: PanelRow; problems: FieldError[] } {
  const problems: FieldError[] = [];
  const values = new Map<PanelColumn, string>();
  columns.forEach((heading, index) => {
    const cell = cells[index];
    if (!heading || !cell || cell.text === '') return;
    const value = readCell(cell, heading, mark);
    if ('message' in value)
      problems.push({ field: `line ${line}, ${COLUMN_NAMES[heading.column]}`, message: value.message });
    else values.set(heading.column, value.text);
  });
  if (cells.slice(columns.length).some(({ text }) => text !== ''))
    problems.push({ field: `line ${line}`, message: 'has more cells than there are headings' });
  for (const column of NEEDED) {
    const field = `line ${line}, ${COLUMN_NAMES[column]}`;
    if (!values.has(column) && !problems.some((problem) => problem.field === field))
      problems.push({ field, message: 'is blank' });
  }
  if (problems.length > 0) return { problems };
  const twice = values.has('massKg') && values.has('arealMassKgPerM2');
  if (twice || (!values.has('massKg') && !values.has('arealMassKgPerM2'))) {
    const message = twice ? 'give the mass or the mass per area, not both' : 'give a mass or a mass per area';
    return { problems: [{ field: `line ${line}, mass`, message }] };
  }
  return { problems, panel: panelOf(values) };
}

function panelOf(values: ReadonlyMap<PanelColumn, string>): PanelRow {
  const text = (column: PanelColumn): string => values.get(column) ?? '';
  const optional = (column: PanelColumn): Partial<PanelRow> =>
    values.has(column) ? { [column]: text(column) } : {};
  return {
    name: text('name'),
    heightMm: text('heightMm'),
    widthMm: text('widthMm'),
    thicknessMm: text('thicknessMm'),
    ...optional('massKg'),
    ...optional('arealMassKgPerM2'),
    ...optional('fittingsKg'),
    ...optional('centreOffsetMm'),
    packingKg: values.get('packingKg') ?? '0',
    count: Number(text('count')),
  };
}

const MAY_BE_NOUGHT: ReadonlySet<PanelColumn> = new Set(['packingKg', 'fittingsKg', 'centreOffsetMm']);

type CellReading = { readonly text: string } | { readonly message: string };

/** A number cell of a sheet is plain decimal text, whatever mark the rest is written with. */
function readCell(
  { text: cell, is }: Cell,
  { column, unit }: ReadHeading,
  written: DecimalMark,
): CellReading {
  const mark = is === 'number' ? 'point' : written;
  if (is === 'formula') return { message: `'${cell}' ${REFUSAL_WORDS.formula}` };
  if (column === 'name') return { text: cell };
  if (column === 'count') {
    return /^[1-9]\d{0,4}$/.test(cell) ? { text: cell } : { message: `'${cell}' is no whole number above 0` };
  }
  if (MAY_BE_NOUGHT.has(column) && /^0+([.,]0+)?$/.test(cell)) return { text: '0' };
  const reading = parseQuantity(cell, { decimalMark: mark, ...(unit && { defaultUnit: unit }) });
  if (!reading.ok) return { message: `'${cell}' ${REFUSAL_WORDS[reading.reason]}` };
  if (dimensionOf(reading.unit) !== DIMENSION_OF_COLUMN[column])
    return { message: `'${cell}' is in a unit of something else` };
  const si = toSi(reading.value, reading.unit).value;
  return { text: (dimensionOf(reading.unit) === 'length' ? si.times(MM_PER_M) : si).toString() };
}

const MM_PER_M = Exact.of('1000');

const REFUSAL_WORDS: Readonly<Record<QuantityRefusal, string>> = {
  blank: 'is blank',
  not_a_quantity: 'is no number with a unit',
  not_a_capacity: 'is no size or mass',
  ambiguous_number: 'can be read in two ways; write it without grouping marks',
  ambiguous_ton: 'does not say which ton',
  unknown_unit: 'has no unit that is known; put it in the heading, such as Height (mm)',
  negative: 'is negative',
  zero: 'is nought',
  formula: 'is a formula; paste its value',
  absurd: 'is far too large; look at the unit',
};
