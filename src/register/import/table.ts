/** One cell of a handed-over file. A number cell of a sheet is plain decimal text, whatever the file's decimal mark. */
export interface Cell {
  readonly text: string;
  readonly is: 'text' | 'number' | 'formula';
}

/** One row, numbered as a spreadsheet numbers it: from 1, blank rows and titles included. */
export interface TableRow {
  readonly number: number;
  readonly cells: readonly Cell[];
}

/** A file as rows of cells, before anything is known of what they mean. */
export interface Table {
  readonly rows: readonly TableRow[];
  readonly encoding: 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252' | 'xlsx';
  /** What stands between the cells; a comma for sheets, whose faulty rows are given back as CSV. */
  readonly delimiter: Delimiter;
  /** Whether every row must have as many cells as the headings: a row that has not lost or gained a delimiter. */
  readonly ragged: boolean;
  /** The names of the sheets of a workbook, of which the first was read. */
  readonly sheetNames?: readonly string[];
}

export const DELIMITERS = [',', ';', '\t'] as const;
export type Delimiter = (typeof DELIMITERS)[number];

/** True for a row in which nothing is written. */
export function isBlank(row: TableRow): boolean {
  return row.cells.every(({ text }) => text === '');
}
