import { CsvError, parse } from 'csv-parse/sync';
import { Problem } from '../../problem.js';
import { DELIMITERS, type Delimiter, type Table } from './table.js';
import { textCell } from './text-cell.js';

/** No row of a register is longer; what is has lost its closing quotation mark. In characters. */
const LONGEST_ROW = 100_000;

/** How much of the file tells the delimiter, in characters. */
const SNIFFED = 20_000;

/**
 * Reads CSV (RFC 4180) whose cells stand between commas, semicolons or tabs, in UTF-8, UTF-16 with a byte-order
 * mark, or Windows-1252 (which holds Latin-1).
 * @throws Problem `unreadable_file`.
 */
export function readCsv(bytes: Buffer): Table {
  const { text, encoding } = decode(bytes);
  if (/[\0\u0001-\u0008\u000e-\u001a]/.test(text)) {
    throw new Problem('unreadable_file', 'The file is not text: it holds bytes that no table has.');
  }
  const declared = /^sep=([,;\t])\r?\n/i.exec(text);
  const body = text.slice(declared?.[0].length ?? 0);
  const delimiter = DELIMITERS.find((sign) => sign === declared?.[1]) ?? sniffDelimiter(body);
  const above = declared ? 1 : 0;
  const rows = records(body, delimiter).map((cells, index) => ({
    number: index + 1 + above,
    cells: cells.map(textCell),
  }));
  return { rows, encoding, delimiter, ragged: true };
}

function decode(bytes: Buffer): { text: string; encoding: Table['encoding'] } {
  const mark = bytes.subarray(0, 2).toString('hex');
  const marked = mark === 'fffe' ? 'utf-16le' : mark === 'feff' ? 'utf-16be' : undefined;
  if (marked) return { text: new TextDecoder(marked).decode(bytes), encoding: marked };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), encoding: 'utf-8' };
  } catch {
    return { text: new TextDecoder('windows-1252').decode(bytes), encoding: 'windows-1252' };
  }
}

/** The delimiter that cuts the most rows into the same number of cells. */
function sniffDelimiter(text: string): Delimiter {
  const start = text.slice(0, SNIFFED);
  const scores = DELIMITERS.map((delimiter) => ({ delimiter, score: score(start, delimiter) }));
  return scores.reduce((best, next) => (next.score > best.score ? next : best)).delimiter;
}

function score(text: string, delimiter: Delimiter): number {
  const counts = new Map<number, number>();
  for (const { length } of parseLoosely(text, delimiter)) {
    if (length > 1) counts.set(length, (counts.get(length) ?? 0) + 1);
  }
  return Math.max(0, ...[...counts].map(([cells, rows]) => (cells - 1) * rows));
}

/** The start of a file may end inside a quoted cell, so nothing is refused here. */
function parseLoosely(text: string, delimiter: Delimiter): string[][] {
  return parse(text, {
    delimiter,
    relax_column_count: true,
    relax_quotes: true,
    skip_records_with_error: true,
  });
}

/** A mark inside a cell that is not quoted, such as the inches of 8' 6", is a letter like any other. */
function records(text: string, delimiter: Delimiter): string[][] {
  try {
    return parseRecords(text, delimiter, { relax_quotes: false });
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    if (error.code !== 'INVALID_OPENING_QUOTE') throw unreadable(error);
  }
  try {
    return parseRecords(text, delimiter, { relax_quotes: true });
  } catch (error) {
    throw error instanceof CsvError ? unreadable(error) : error;
  }
}

function parseRecords(text: string, delimiter: Delimiter, options: { relax_quotes: boolean }): string[][] {
  return parse(text, { ...options, delimiter, relax_column_count: true, max_record_size: LONGEST_ROW });
}

function unreadable(error: CsvError): Problem {
  const line: unknown = error['lines'];
  const where = typeof line === 'number' ? ` near line ${line}` : '';
  const why = CSV_FAULTS[error.code] ?? 'check the quotation marks';
  return new Problem('unreadable_file', `The rows cannot be told apart${where}: ${why}.`);
}

const CSV_FAULTS: Readonly<Record<string, string>> = {
  CSV_QUOTE_NOT_CLOSED: 'a quotation mark is opened and never closed',
  CSV_INVALID_CLOSING_QUOTE:
    'something follows a closing quotation mark; a mark inside a cell is written twice',
  CSV_MAX_RECORD_SIZE: 'a row is longer than any row of a register, as when a closing quotation mark is lost',
};
