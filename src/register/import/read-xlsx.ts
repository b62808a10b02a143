import { createRequire } from 'node:module';
import { Worker } from 'node:worker_threads';
import { Problem } from '../../problem.js';
import { inspectXlsx } from './inspect-xlsx.js';
import type { Cell, Table } from './table.js';
import { textCell } from './text-cell.js';

/** What the worker hands back of one cell. Numbers come as they are written in the file, dates as instants in UTC. */
type SheetValue = null | string | boolean | Date | { readonly number: string };

/** The reader keeps whole sheets in memory: beyond this its thread ends, and the server goes on. */
const MOST_MEMORY_MB = 512;
const MOST_SECONDS = 60;

/**
 * Reads the first sheet. A file of its own would have to be compiled before a test could start it, so the few
 * lines that run in the other thread stand here.
 */
const READ_FIRST_SHEET = `
  const { parentPort, workerData } = require('node:worker_threads');
  const { readSheet } = require(workerData.reader);
  const parseNumber = (number) => ({ number });
  readSheet(Buffer.from(workerData.bytes), 1, { parseNumber, trim: false })
    .then((rows) => parentPort.postMessage(rows));
`;

/**
 * Reads the first sheet of an XLSX file.
 * @throws Problem `unreadable_file`, `file_too_large`.
 */
export async function readXlsx(bytes: Buffer): Promise<Table> {
  const { formulas, sheetNames } = await inspectXlsx(bytes);
  const rows = await readInWorker(bytes);
  return {
    rows: rows.map((values, index) => ({
      number: index + 1,
      cells: values.map((value, column) => {
        const cell = sheetCell(value);
        return formulas.has(`${columnName(column)}${index + 1}`)
          ? { text: `=(${cell.text})`, is: 'formula' }
          : cell;
      }),
    })),
    sheetNames,
    encoding: 'xlsx',
    delimiter: ',',
    ragged: false,
  };
}

function readInWorker(bytes: Buffer): Promise<SheetValue[][]> {
  const reader = createRequire(import.meta.url).resolve('read-excel-file/node');
  const worker = new Worker(READ_FIRST_SHEET, {
    eval: true,
    workerData: { bytes, reader },
    resourceLimits: { maxOldGenerationSizeMb: MOST_MEMORY_MB },
  });
  return new Promise<SheetValue[][]>((resolve, reject) => {
    const giveUp = setTimeout(() => reject(unreadable()), MOST_SECONDS * 1000);
    worker.once('message', resolve);
    worker.once('error', () => reject(unreadable()));
    worker.once('exit', () => reject(unreadable()));
    worker.once('exit', () => clearTimeout(giveUp));
  }).finally(() => worker.terminate());
}

function unreadable(): Problem {
  return new Problem('unreadable_file', 'The first sheet of the workbook cannot be read.');
}

function sheetCell(value: SheetValue): Cell {
  if (value === null) return { text: '', is: 'text' };
  if (typeof value === 'string') return textCell(value);
  if (typeof value === 'boolean') return { text: value ? 'yes' : 'no', is: 'text' };
  if (value instanceof Date) return { text: value.toISOString().slice(0, 10), is: 'text' };
  return { text: value.number, is: 'number' };
}

/** The letters of a column, counted from 0: A, B … Z, AA. */
function columnName(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : columnName(Math.floor(index / 26) - 1) + letter;
}
