import type { Duty } from '../gear/gear.js';
import type { KindDefinition } from '../gear/kind.js';
import { Exact } from '../quantities/exact.js';
import type { Measure } from '../quantities/marking.js';
import { DIMENSION_OF_MEASURE, needUnitOf } from '../quantities/measure-unit.js';
import { dimensionOf, isUnit, toSi } from '../quantities/units.js';
import { hitchNeed, type Hitch } from '../rigging/hitch.js';
import type { Working } from '../working.js';
import type { DimensionNeed, GearLine, RatingNeed } from './need.js';

/** A rating that a person asks for, in any unit of the kind's measure. */
export interface WantedRating {
  readonly value: string;
  readonly unit: string;
}

/** A dimension that a person asks for, in the unit that its name ends in. */
export type WantedDimension = Pick<DimensionNeed, 'dimension' | 'rule' | 'value'>;

/** A change that a person makes to a line of the method, with the reason. What is absent stays as the method has it. */
export interface LineAdjustment {
  readonly lineKey: string;
  /** 0 drops the line but keeps it in sight. */
  readonly quantity?: number;
  readonly rating?: WantedRating;
  readonly dimensions?: readonly WantedDimension[];
  readonly reason: string;
}

/** A line that a person adds beside the method's, with the reason. */
export interface AddedLine {
  readonly key: string;
  readonly label: string;
  readonly kind: string;
  readonly duty: Duty;
  readonly quantity: number;
  /** With a hitch, the load on it; else the rating of each item. */
  readonly rating?: WantedRating;
  readonly hitch?: Hitch;
  readonly dimensions?: readonly WantedDimension[];
  readonly reason: string;
}

/** The shape of a figure that a person may ask for: plain decimal text, nought or more. */
export const WANTED_FIGURE = /^\d+(\.\d+)?$/;

/** The wanted rating as a need in SI units; undefined where it is no rating above nought in a unit of the measure. */
export function readWantedRating({ value, unit }: WantedRating, measure: Measure): RatingNeed | undefined {
  if (!WANTED_FIGURE.test(value) || !isUnit(unit)) return undefined;
  if (dimensionOf(unit) !== DIMENSION_OF_MEASURE[measure]) return undefined;
  const inSi = toSi(value, unit).value;
  return inSi.isZero() ? undefined : { measure, value: inSi.toString(), unit: needUnitOf(measure) };
}

/** The line as a person changed it. The change must have passed `checkChanges`. */
export function adjustedLine(line: GearLine, adjustment: LineAdjustment, kind: KindDefinition): GearLine {
  const rating = wantedNeed(adjustment.rating, kind);
  return {
    ...line,
    quantity: adjustment.quantity ?? line.quantity,
    ...(rating && { rating }),
    dimensions: changedDimensions(line.dimensions, adjustment.dimensions ?? []),
    workings: [...line.workings, ...statedByHand(line.label, adjustment.rating, rating, RATING_OF_EACH)],
    adjusted: { reason: adjustment.reason, methodQuantity: line.quantity },
  };
}

/** The gear line of a line that a person added. It must have passed `checkChanges`. */
export function addedLine(added: AddedLine, kind: KindDefinition): GearLine {
  const { key, label, duty, quantity, reason } = added;
  const stated = wantedNeed(added.rating, kind);
  const hitched = added.hitch && stated && hitchNeed(Exact.of(stated.value), added.hitch, kind.hitches ?? []);
  const rating = hitched?.ok && stated ? { ...stated, value: hitched.wllKg.toString() } : stated;
  return {
    key,
    label,
    kind: kind.kind,
    duty,
    quantity,
    ...(rating && { rating }),
    dimensions: changedDimensions([], added.dimensions ?? []),
    workings: hitched?.ok
      ? [...statedByHand(label, added.rating, stated, LOAD_ON_HITCH), hitched.working]
      : statedByHand(label, added.rating, stated, RATING_OF_EACH),
    adjusted: { reason, methodQuantity: 0 },
  };
}

function wantedNeed(wanted: WantedRating | undefined, kind: KindDefinition): RatingNeed | undefined {
  return wanted && kind.rating && readWantedRating(wanted, kind.rating.measure);
}

/** What a stated figure is called: in the title, as it was written, and in SI. */
const RATING_OF_EACH = { title: 'rating of each', stated: 'stated rating', read: 'least rating' } as const;
const LOAD_ON_HITCH = {
  title: 'load on one hitch',
  stated: 'stated load',
  read: 'load on the hitch',
} as const;

function statedByHand(
  label: string,
  wanted: WantedRating | undefined,
  need: RatingNeed | undefined,
  names: typeof RATING_OF_EACH | typeof LOAD_ON_HITCH,
): readonly Working[] {
  if (!wanted || !need) return [];
  return [
    {
      title: `${label}: ${names.title}, stated for this job`,
      formula: 'as stated',
      inputs: [{ name: names.stated, value: wanted.value, unit: wanted.unit }],
      result: { name: names.read, value: need.value, unit: need.unit },
      source: 'common-practice',
    },
  ];
}

/** What is wanted replaces what the method says of the same dimension. */
function changedDimensions(
  fromMethod: readonly DimensionNeed[],
  wanted: readonly WantedDimension[],
): readonly DimensionNeed[] {
  const kept = fromMethod.filter((need) => !wanted.some(({ dimension }) => dimension === need.dimension));
  return [...kept, ...wanted.map((want) => ({ ...want, source: 'common-practice' }))];
}
