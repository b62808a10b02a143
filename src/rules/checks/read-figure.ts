import { Exact } from '../quantities/exact.js';
import { readNumber } from '../quantities/read-number.js';
import type { CheckFigure, FigureUnit } from './checklist.js';
import type { CheckProblemCode } from './check-problem.js';

/** A figure as someone entered it. */
export interface EnteredFigure {
  readonly value: string;
  readonly unit: FigureUnit;
}

/** A figure that could be read. */
export interface ReadFigure {
  readonly definition: CheckFigure;
  /** As entered, in `unit`. */
  readonly entered: Exact;
  readonly unit: FigureUnit;
  /** In mm, degrees or a count. */
  readonly value: Exact;
}

/** The units that each figure may be entered in, the one that limits are kept in first. */
export const UNITS_OF_FIGURE = {
  length: ['mm', 'in'],
  angle: ['°'],
  count: [''],
} as const satisfies Readonly<Record<CheckFigure['measures'], readonly FigureUnit[]>>;

/** One inch in mm, exact (NIST SP 811 appendix B.8, after the yard of 1959). */
const MM_PER_INCH = Exact.of('25.4');

/** No figure of a checklist takes longer to write. */
const LONGEST_ENTRY = 20;

/** An inch rule's halves down to sixty-fourths, after whole inches or none: `7/16`, `1 3/4`, `1-3/4`. */
const INCH_FRACTION = /^(?:(\d+)[ -])?(\d+)\/(2|4|8|16|32|64)$/;

/** A sixty-fourth has six decimals, so that no fraction of an inch rule is rounded. */
const FRACTION = { places: 6, rounding: 'down' } as const;

/**
 * Reads a figure in the unit it was entered in: lengths in mm or inches, with decimals or as an inch rule's fractions;
 * angles in degrees; counts whole. Inches become mm exactly. Gives the code of the problem where it cannot be read,
 * is negative, or is more than can be meant.
 */
export function readFigure(
  definition: CheckFigure,
  { value, unit }: EnteredFigure,
): ReadFigure | CheckProblemCode {
  if (!unitsOf(definition).includes(unit)) return 'unit_not_of_figure';
  const text = value.trim();
  if (/^[-−–] ?[\d.,]/.test(text)) return 'figure_negative';
  const entered = text.length > LONGEST_ENTRY ? undefined : readEntry(text, unit);
  if (entered === undefined) return 'figure_unreadable';
  const inKept = unit === 'in' ? entered.times(MM_PER_INCH) : entered;
  if (definition.measures === 'count' && !isWhole(inKept)) return 'figure_not_whole';
  if (definition.most !== undefined && Exact.of(definition.most).isLessThan(inKept))
    return 'figure_out_of_range';
  return { definition, entered, unit, value: inKept };
}

function unitsOf({ measures }: CheckFigure): readonly FigureUnit[] {
  return UNITS_OF_FIGURE[measures];
}

/** A point is always a decimal mark; a comma only where it cannot group thousands. */
function readEntry(text: string, unit: FigureUnit): Exact | undefined {
  const fraction = unit === 'in' ? INCH_FRACTION.exec(text) : null;
  if (fraction) {
    const [, whole = '0', above = '0', below = '1'] = fraction;
    return Exact.of(whole).plus(Exact.of(above).dividedBy(Exact.of(below), FRACTION));
  }
  const number = readNumber(text, text.includes(',') ? 'unknown' : 'point');
  return number === undefined ? undefined : Exact.of(number);
}

function isWhole(value: Exact): boolean {
  return !value.toString().includes('.');
}
