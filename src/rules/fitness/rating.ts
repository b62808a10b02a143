import type { Gear } from '../gear/gear.js';
import type { KindDefinition } from '../gear/kind.js';
import type { GearLine, RatingNeed } from '../lines/need.js';
import type { Exact } from '../quantities/exact.js';
import type { Marking, Measure } from '../quantities/marking.js';
import { isUnit, massAsForce, toSi, type SiUnit } from '../quantities/units.js';
import type { SourceKey, Working } from '../working.js';
import type { Refusal } from './refusal.js';

/** How an item's stamped rating answers a need. */
export interface Rated {
  readonly refusals: readonly Refusal[];
  readonly workings: readonly Working[];
  readonly ratio?: Exact;
}

/** How the ratio that the choice between fit items goes by is kept: never flattering the item. */
const RATIO_DOWN = { places: 3, rounding: 'down' } as const;

/**
 * Whether the item's stamped rating carries what the line asks: the same measure, compared exactly. Equality passes.
 * Of several marks of one measure the lowest counts. A mark that cannot be read, or is not above zero, rates nothing.
 */
export function rate(gear: Gear, line: GearLine, kind: KindDefinition): Rated {
  const measure = measureAsked(line, kind);
  if (measure === undefined) return { refusals: [], workings: [] };
  const source = kind.rating?.source.key ?? 'common-practice';
  const marks = gear.markings.filter((marking) => marking.measure === measure);
  const markedOtherwise = marks.length === 0 && gear.markings.length > 0;
  if (line.rating && markedOtherwise) return notComparable(line, source);
  const ratings = marks.map(readMarking).filter((rating) => rating !== undefined);
  if (ratings.length === 0 || ratings.length < marks.length) {
    return refused({ code: 'unrated', ...asked(line), source });
  }
  if (!stampedAsItsKind(marks, measure, kind)) return notComparable(line, source);
  return line.rating ? compare(ratings, line.rating, line, source) : { refusals: [], workings: [] };
}

/** The measure that must be stamped: the line's, or the kind's own where the kind may not go unrated. */
function measureAsked(line: GearLine, kind: KindDefinition): Measure | undefined {
  if (line.rating) return line.rating.measure;
  return kind.rating?.required ? kind.rating.measure : undefined;
}

/** False when a mark is in a unit that the kind is never stamped in, so that no one can say what it means. */
function stampedAsItsKind(marks: readonly Marking[], measure: Measure, { rating }: KindDefinition): boolean {
  return rating?.measure !== measure || marks.every(({ unit }) => rating.units.includes(unit));
}

/** A rating or a need as figures that compare, with the workings that brought it there. */
interface Amount {
  readonly value: Exact;
  readonly unit: SiUnit;
  readonly workings: readonly Working[];
}

function readMarking({ value, unit }: Marking): Amount | undefined {
  if (!isUnit(unit) || !/^\d+(\.\d+)?$/.test(value)) return undefined;
  const si = toSi(value, unit);
  if (si.value.isZero()) return undefined;
  if (si.unit === unit) return { ...si, workings: [] };
  const working: Working = {
    title: 'Marking in SI',
    formula: 'R = marking × factor',
    inputs: [
      { name: 'marking', value, unit },
      { name: 'factor', value: toSi('1', unit).value.toString(), unit: `${si.unit} per ${unit}` },
    ],
    result: { name: 'R', value: si.value.toString(), unit: si.unit },
    source: 'nist-sp811',
  };
  return { ...si, workings: [working] };
}

function compare(ratings: readonly Amount[], need: RatingNeed, line: GearLine, source: SourceKey): Rated {
  const amount: Amount = { ...toSi(need.value, need.unit), workings: [] };
  const unit = commonUnit([amount, ...ratings]);
  if (unit === undefined) return notComparable(line, source);
  const needed = inUnit(amount, unit);
  const lowest = ratings
    .map((rating) => inUnit(rating, unit))
    .reduce((least, rating) => (rating.value.isLessThan(least.value) ? rating : least));
  const workings = [...needed.workings, ...lowest.workings];
  const refusals: Refusal[] = lowest.value.isLessThan(needed.value)
    ? [{ code: 'under_rated', needed: needed.value.toString(), has: lowest.value.toString(), unit, source }]
    : [];
  if (needed.value.isZero()) return { refusals, workings };
  return { refusals, workings, ratio: lowest.value.dividedBy(needed.value, RATIO_DOWN) };
}

/** The unit that all amounts compare in: their own when it is one, N for masses among forces, otherwise none. */
function commonUnit(amounts: readonly Amount[]): SiUnit | undefined {
  const units = new Set(amounts.map(({ unit }) => unit));
  const [first] = units;
  if (units.size === 1) return first;
  return [...units].every((unit) => unit === 'kg' || unit === 'N') ? 'N' : undefined;
}

/** The amount in a unit that `commonUnit` gave for it. */
function inUnit(amount: Amount, unit: SiUnit): Amount {
  if (amount.unit === unit) return amount;
  const { force, working } = massAsForce(amount.value);
  return { value: force, unit, workings: [...amount.workings, working] };
}

function notComparable(line: GearLine, source: SourceKey): Rated {
  return refused({ code: 'rating_not_comparable', ...asked(line), source });
}

function asked({ rating }: GearLine): { needed?: string; unit?: string } {
  return rating ? { needed: rating.value, unit: rating.unit } : {};
}

function refused(refusal: Refusal): Rated {
  return { refusals: [refusal], workings: [] };
}
