import { Exact } from './exact.js';

/** Which mark a file writes decimals with. Under `unknown` only numbers that read one way are read. */
export type DecimalMark = 'point' | 'comma' | 'unknown';

const MARK_OF = { point: '.', comma: ',' } as const;

/** Digits grouped in threes from the right by a space or an apostrophe, which are never decimal marks. */
const SPACED_GROUPS = /^[1-9]\d{0,2}(?:[ '’]\d{3})+(?=[.,]|$)/;

/** Digits grouped in threes by a point or a comma: `1,234` or `12.345.678`. */
const MARKED_GROUPS = /^[1-9]\d{0,2}([.,])\d{3}(?:\1\d{3})*$/;

/**
 * Reads a number written with any of the usual decimal and grouping marks.
 * Gives its plain decimal text, or undefined when it could be read in two ways or contradicts `decimalMark`:
 * '2,500' is two and a half or two thousand five hundred, and only the rest of the file can tell.
 */
export function readNumber(text: string, decimalMark: DecimalMark): string | undefined {
  const tight = text.replace(SPACED_GROUPS, (groups) => groups.replace(/[ '’]/g, ''));
  const match = /^(\d*)((?:[.,]\d+)*)$/.exec(tight);
  if (!match || tight === '') return undefined;
  const marks = tight.replace(/\d/g, '');
  if (marks === '') return plain(tight);
  const last = marks.slice(-1);
  if (new Set(marks).size === 2) {
    return readMixed(tight, last, decimalMark);
  }
  if (marks.length > 1) return readGrouped(tight, decimalMark);
  return readSingleMark(tight, last, decimalMark);
}

/** Two different marks: the last is the decimal mark, and the part before it must be well grouped by the other. */
function readMixed(text: string, last: string, convention: DecimalMark): string | undefined {
  const at = text.lastIndexOf(last);
  const whole = text.slice(0, at);
  if (!MARKED_GROUPS.test(whole) || contradicts(last, convention)) return undefined;
  return plain(`${whole.replace(/[.,]/g, '')}.${text.slice(at + 1)}`);
}

/** One mark several times can only group, unless the file writes decimals with it. */
function readGrouped(text: string, convention: DecimalMark): string | undefined {
  const mark = MARKED_GROUPS.exec(text)?.[1];
  if (mark === undefined || (convention !== 'unknown' && MARK_OF[convention] === mark)) return undefined;
  return plain(text.replace(/[.,]/g, ''));
}

/** One mark once: the convention decides; without one, a number that could be grouped in threes is not read. */
function readSingleMark(text: string, mark: string, convention: DecimalMark): string | undefined {
  const couldGroup = MARKED_GROUPS.test(text);
  if (convention === 'unknown') return couldGroup ? undefined : plain(text.replace(mark, '.'));
  if (MARK_OF[convention] === mark) return plain(text.replace(mark, '.'));
  return couldGroup ? plain(text.replace(mark, '')) : undefined;
}

function contradicts(mark: string, convention: DecimalMark): boolean {
  return convention !== 'unknown' && MARK_OF[convention] !== mark;
}

/** Canonical decimal text: no leading or trailing zeros, a digit before the point. */
function plain(text: string): string {
  return Exact.of(text.startsWith('.') ? `0${text}` : text).toString();
}

/**
 * The decimal mark of a column or file, from the cells whose numbers can only be read one way: '8.5 m' speaks for
 * the point, '0,75 t' for the comma, '2,500 daN' for neither. Cells that disagree, or none that tell, give `unknown`.
 */
export function detectDecimalMark(cells: readonly string[]): DecimalMark {
  const seen = new Set<DecimalMark>();
  for (const cell of cells) {
    const number = /^\D*?(\d[\d.,]*\d)(?:\D*|\D+2)$/.exec(cell)?.[1];
    if (number === undefined || !/[.,]/.test(number)) continue;
    const asPoint = readNumber(number, 'point') !== undefined;
    const asComma = readNumber(number, 'comma') !== undefined;
    if (asPoint !== asComma) seen.add(asPoint ? 'point' : 'comma');
  }
  const [only, another] = [...seen];
  return only === undefined || another !== undefined ? 'unknown' : only;
}
