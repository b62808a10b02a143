import { createHash } from 'node:crypto';
import type { DecimalMark } from '../../rules/quantities/read-number.js';
import type { Field } from './fields.js';
import { plainWords } from './plain-words.js';
import type { DateOrder } from './read-date.js';

/** How a file is to be read: guessed at first, then as the storeman says. Kept for the next file with the same headings. */
export interface ImportMapping {
  /** The field of each column, in the order of the file; null leaves a column out. */
  readonly columns: readonly (Field | null)[];
  /** What the storeman says of the file's dates and numbers; 'unknown' lets the file tell. */
  readonly dateOrder: DateOrder;
  readonly decimalMark: DecimalMark;
  /** The unit of plain numbers in columns whose heading names none; null refuses them. */
  readonly lengthUnit: 'm' | 'mm' | 'cm' | 'ft' | 'in' | null;
  readonly massUnit: 'kg' | 't' | 'lb' | null;
  readonly forceUnit: 'daN' | 'kN' | 'kgf' | 'lbf' | null;
  /** What the storeman says of words that the catalogue and the list of stores do not know, by `plainWords`. */
  readonly kinds: Readonly<Record<string, string>>;
  readonly stores: Readonly<Record<string, number>>;
  /** The store of rows that name none; null refuses them. */
  readonly storeId: number | null;
  /** Whether the reports of the examinations are on file. */
  readonly reportsOnFile: boolean;
}

/** The reading that leaves everything to the file. */
export function plainMapping(columns: readonly (Field | null)[]): ImportMapping {
  return {
    columns,
    dateOrder: 'unknown',
    decimalMark: 'unknown',
    lengthUnit: null,
    massUnit: null,
    forceUnit: null,
    kinds: {},
    stores: {},
    storeId: null,
    reportsOnFile: false,
  };
}

/** What tells files with the same headings: SHA-256 of the headings in their order, give or take case and accents. */
export function headingsSignature(headings: readonly string[]): string {
  return createHash('sha256')
    .update(JSON.stringify(headings.map(plainWords)))
    .digest('hex');
}

/** A mapping as it was kept. Members that a later version has more come from the plain one. */
export function readMapping(kept: object): ImportMapping {
  return { ...plainMapping([]), ...kept };
}
