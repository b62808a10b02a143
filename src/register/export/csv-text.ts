import { stringify } from 'csv-stringify/sync';
import { guardCell } from './cell-guard.js';

/**
 * Rows as CSV (RFC 4180: CRLF, quotes doubled) in UTF-8 with a byte-order mark, so that spreadsheets read every
 * letter. No cell is taken for a formula.
 */
export function csvText(rows: readonly (readonly string[])[], delimiter = ','): string {
  const guarded = rows.map((row) => row.map(guardCell));
  return stringify(guarded, { bom: true, delimiter, record_delimiter: 'windows', quoted_match: /[\r\n]/ });
}
