import { Problem } from '../../problem.js';
import { readCsv } from './read-csv.js';
import { readXlsx } from './read-xlsx.js';
import { isBlank, type Table } from './table.js';

/** Rows that one file may have: what a store has, many times over. */
const MOST_ROWS = 50_000;
const MOST_COLUMNS = 200;

/**
 * Reads a file as a table. Its first bytes say what it is, never its name.
 * @throws Problem `unreadable_file`, `file_too_large`.
 */
export async function readTable(bytes: Buffer): Promise<Table> {
  const start = bytes.subarray(0, 4).toString('latin1');
  if (start === '\xD0\xCF\x11\xE0') {
    throw new Problem(
      'unreadable_file',
      'This is a workbook of the old kind (XLS), or one locked with a password.',
    );
  }
  const table = start === 'PK\x03\x04' ? await readXlsx(bytes) : readCsv(bytes);
  if (table.rows.every(isBlank)) throw new Problem('unreadable_file', 'Nothing is written in the file.');
  if (table.rows.length > MOST_ROWS)
    throw new Problem('file_too_large', `The file has more than ${MOST_ROWS} rows.`);
  if (table.rows.some(({ cells }) => cells.length > MOST_COLUMNS)) {
    throw new Problem('unreadable_file', `The file has a row of more than ${MOST_COLUMNS} cells.`);
  }
  return table;
}
