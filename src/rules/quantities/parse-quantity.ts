import { Exact } from './exact.js';
import { readNumber, type DecimalMark } from './read-number.js';
import { readUnit } from './unit-words.js';
import { dimensionOf, toSi, type Dimension, type UnitSymbol } from './units.js';

export type QuantityRefusal =
  | 'blank'
  | 'not_a_quantity'
  /** A tension or breaking force: true, but no capacity, so never to be read as one. */
  | 'not_a_capacity'
  | 'ambiguous_number'
  | 'ambiguous_ton'
  | 'unknown_unit'
  | 'negative'
  | 'zero'
  | 'formula'
  | 'absurd';

export type QuantityReading =
  | {
      readonly ok: true;
      /** Plain decimal text in `unit`, as written in the cell: not converted. */
      readonly value: string;
      readonly unit: UnitSymbol;
      /** True when the cell names no unit and the caller's default was taken. */
      readonly assumedUnit: boolean;
      /** What the cell itself says it rates: LC, or WLL and its older name SWL. */
      readonly measureHint?: MeasureHint;
    }
  | {
      readonly ok: false;
      readonly reason: QuantityRefusal;
      /** The part of the cell that could not be read. */
      readonly part?: string;
    };

export interface QuantityOptions {
  readonly decimalMark: DecimalMark;
  /** The unit of the column, taken for cells that name none. */
  readonly defaultUnit?: UnitSymbol;
}

type MeasureHint = 'lashingCapacity' | 'workingLoadLimit';

const HINTS: ReadonlyMap<string, MeasureHint> = new Map([
  ['LC', 'lashingCapacity'],
  ['WLL', 'workingLoadLimit'],
  ['SWL', 'workingLoadLimit'],
]);

/** Standard tension and hand forces, breaking force and load. */
const NO_CAPACITY = /(?:^|[^a-z])(?:STF|SHF|MBF|MBL|MBS|BF)(?![a-z])/i;

const HINT = /^(?:(LC|WLL|SWL)\s*[:=]?\s*)?(.*?)(?:\s*\(?(LC|WLL|SWL)\)?)?$/i;

/** A number, then perhaps a unit. The unit begins with a letter; a second number is none of it. */
const QUANTITY = /^([\d.,](?:[\d.,]|[ '’](?=\d))*)\s*(\p{L}(?:[\p{L}\d/^².]| (?!\d))*)?$/u;

/** The largest a store's gear can be in SI units, well past the greatest in the trade. Common practice, no source. */
const LARGEST: Readonly<Record<Dimension, string>> = {
  mass: '1000000',
  force: '10000000',
  length: '1000',
  persons: '100',
  arealMass: '10000',
};

/** No quantity takes longer to write; what does is a note. */
const LONGEST_CELL = 60;

/**
 * Reads a cell as a storeman writes it: '1.5 t', '5000daN', '3,300 lb', '2.5 t LC', '0,75 t'. Never guesses: a
 * cell that can be read in two ways, or in none, is refused with the reason.
 */
export function parseQuantity(cell: string, options: QuantityOptions): QuantityReading {
  const text = cell.replace(/[\s\u00a0\u2007\u2009\u202f]+/g, ' ').trim();
  const reason = refusedAtSight(text);
  if (reason) return { ok: false, reason, part: text };
  const [, before, body = '', after] = HINT.exec(text) ?? [];
  if (/^[-−–] ?[\d.,]/.test(body)) return { ok: false, reason: 'negative', part: body };
  const match = QUANTITY.exec(body);
  const hintedTwice = before !== undefined && after !== undefined;
  if (!match || hintedTwice) return { ok: false, reason: 'not_a_quantity', part: text };
  const measureHint = HINTS.get((before ?? after ?? '').toUpperCase());
  return readParts(match[1] ?? '', match[2], measureHint, options);
}

/** What can be told without reading the number. */
function refusedAtSight(text: string): QuantityRefusal | undefined {
  if (text.length > LONGEST_CELL) return 'not_a_quantity';
  if (/^[-–—]?$/.test(text)) return 'blank';
  if (/^[=+@]/.test(text)) return 'formula';
  return /\d/.test(text) && NO_CAPACITY.test(text) ? 'not_a_capacity' : undefined;
}

function readParts(
  number: string,
  unitText: string | undefined,
  measureHint: MeasureHint | undefined,
  options: QuantityOptions,
): QuantityReading {
  const value = readNumber(number, options.decimalMark);
  if (value === undefined) return { ok: false, reason: 'ambiguous_number', part: number };
  const written = unitText === undefined ? undefined : readUnit(unitText);
  if (written && !written.ok) return { ok: false, reason: written.reason, part: unitText ?? '' };
  const unit = written?.unit ?? options.defaultUnit;
  if (unit === undefined) return { ok: false, reason: 'unknown_unit', part: number };
  if (Exact.of(value).isZero()) return { ok: false, reason: 'zero', part: number };
  if (isAbsurd(value, unit)) return { ok: false, reason: 'absurd', part: number };
  const reading = { ok: true, value, unit, assumedUnit: written === undefined } as const;
  return measureHint === undefined ? reading : { ...reading, measureHint };
}

/** Larger than anything in a store, or a part of a person. */
function isAbsurd(value: string, unit: UnitSymbol): boolean {
  const dimension = dimensionOf(unit);
  if (dimension === 'persons' && value.includes('.')) return true;
  return Exact.of(LARGEST[dimension]).isLessThan(toSi(value, unit).value);
}
