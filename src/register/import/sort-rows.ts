import type { Fault, Notice, NoticeCode } from './finding.js';
import { TOTAL_WORDS } from './heading-words.js';
import type { ImportMapping } from './mapping.js';
import { plainWords } from './plain-words.js';
import { isBlank, type Table, type TableRow } from './table.js';

/** The rows of a file by what they are. */
export interface SortedRows {
  readonly headings: TableRow;
  /** What is to become items. */
  readonly body: readonly TableRow[];
  /** Rows whose cells do not stand under the headings. */
  readonly miscounted: readonly { readonly row: TableRow; readonly faults: readonly Fault[] }[];
  readonly notices: readonly Notice[];
  readonly skipped: number;
}

const TOTALS = new Set(TOTAL_WORDS);

/** Sorts the rows below the headings: items, blank rows, sums, headings repeated, and rows with too many or too few cells. */
export function sortRows(table: Table, headings: TableRow, mapping: ImportMapping): SortedRows {
  const above = table.rows
    .filter((row) => row.number < headings.number && !isBlank(row))
    .map(({ number }) => number);
  const below = table.rows.filter((row) => row.number > headings.number);
  const blank = below.filter(isBlank).map(({ number }) => number);
  const notices: Notice[] = [];
  if (above.length > 0) notices.push({ code: 'above_headings', rows: above });
  if (blank.length > 0 && blank.some((number) => number <= lastWritten(below)))
    notices.push({ code: 'blank_rows', rows: blank });
  const [body, miscounted]: [TableRow[], SortedRows['miscounted'][number][]] = [[], []];
  const width = commonWidth(below);
  const end = below.findLast((row) => written(row) > 1)?.number ?? 0;
  for (const row of below.filter((candidate) => !isBlank(candidate))) {
    const code = noItem(row, { headings, mapping, end });
    const fault = table.ragged ? countFault(row, headings.cells.length, width) : undefined;
    if (code) notices.push({ row: row.number, cell: firstText(row), code });
    else if (fault) miscounted.push({ row, faults: [fault] });
    else body.push(row);
  }
  return { headings, body, miscounted, notices, skipped: below.length - body.length - miscounted.length };
}

function lastWritten(rows: readonly TableRow[]): number {
  return rows.findLast((row) => !isBlank(row))?.number ?? 0;
}

/** Why a row is no item, or undefined of one that is to be. */
function noItem(
  row: TableRow,
  { headings, mapping, end }: { headings: TableRow; mapping: ImportMapping; end: number },
): NoticeCode | undefined {
  if (isTotal(row, mapping)) return 'total_row';
  if (isRepeated(row, headings)) return 'repeated_headings';
  const isSentence = written(row) === 1 && /\S\s+\S/.test(firstText(row));
  return isSentence && row.number > end ? 'footer' : undefined;
}

function written(row: TableRow): number {
  return row.cells.filter(({ text }) => text !== '').length;
}

/** A row that sums up begins with a word for it, and names no serial number. */
function isTotal(row: TableRow, mapping: ImportMapping): boolean {
  const serial = row.cells[mapping.columns.indexOf('serial')]?.text ?? '';
  return serial === '' && TOTALS.has(plainWords(firstText(row)).replace(/ [\d ,]+$/, ''));
}

function isRepeated(row: TableRow, headings: TableRow): boolean {
  return headings.cells.every(({ text }, column) => text === (row.cells[column]?.text ?? ''));
}

/** The number of cells that all rows have at least, or 0 where one row alone cannot tell. */
function commonWidth(rows: readonly TableRow[]): number {
  const counts = rows.filter((row) => !isBlank(row)).map(({ cells }) => cells.length);
  return counts.length > 1 ? Math.min(...counts) : 0;
}

/** Some programs end every row with a delimiter but the headings: blank cells that all rows have are no fault. */
function countFault(row: TableRow, headings: number, width: number): Fault | undefined {
  const isBlankBeyond = row.cells.slice(headings).every(({ text }) => text === '');
  if (row.cells.length === headings || (row.cells.length === width && width > headings && isBlankBeyond))
    return undefined;
  const subject = `${row.cells.length} where the headings have ${headings}`;
  return { row: row.number, cell: firstText(row), code: 'field_count', subject };
}

function firstText(row: TableRow): string {
  return row.cells.find(({ text }) => text !== '')?.text ?? '';
}
