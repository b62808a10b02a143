import type { KindDefinition } from '../../rules/gear/kind.js';
import { guessField } from './guess-fields.js';
import { isBlank, type Table, type TableRow } from './table.js';

/** Titles above the headings are short. */
const ROWS_LOOKED_AT = 15;

/**
 * The row of the headings: of the first rows the one with most headings that can be guessed. Where none can, as in
 * an unknown language, the first row that is written to its full breadth.
 */
export function findHeadings(table: Table, kinds: readonly KindDefinition[]): TableRow {
  const rows = table.rows.slice(0, ROWS_LOOKED_AT).filter((row) => !isBlank(row));
  const counted = rows.map((row) => ({ row, known: known(row, kinds), written: written(row) }));
  const broadest = Math.max(...counted.map((entry) => entry.written));
  const best = counted.reduce((first, next) => (next.known > first.known ? next : first));
  if (best.known >= 2) return best.row;
  return (counted.find((entry) => entry.written === broadest) ?? best).row;
}

function known(row: TableRow, kinds: readonly KindDefinition[]): number {
  return new Set(row.cells.flatMap(({ text }) => guessField(text, kinds) ?? [])).size;
}

function written(row: TableRow): number {
  return row.cells.filter(({ text }) => text !== '').length;
}
