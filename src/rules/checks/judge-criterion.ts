import { Exact } from '../quantities/exact.js';
import type { Figure, Working } from '../working.js';
import type { Criterion, LimitCriterion, ShareCriterion } from './checklist.js';
import { UNITS_OF_FIGURE, type ReadFigure } from './read-figure.js';

/** What a criterion says of the figures it was given. */
export interface CriterionVerdict {
  readonly failed: boolean;
  readonly working: Working;
}

/**
 * Decimals of the share that is shown, of which no limit has more. The verdict compares products and rounds nothing.
 */
export const SHARE_PLACES = 8;

const FAILS = 'The limit is reached or passed: out of use until a competent person has looked at it.';

/** What each rule compares with the limit: how it is named, worked out and written. */
const SHARES: Readonly<
  Record<
    ShareCriterion['rule'],
    {
      readonly name: string;
      readonly of: (part: Exact, whole: Exact) => Exact;
      readonly formula: (part: string, whole: string) => string;
    }
  >
> = {
  shareAbove: {
    name: 'share',
    of: (part) => part,
    formula: (part, whole) => `${part} ÷ ${whole}`,
  },
  growthAbove: {
    name: 'growth',
    of: (part, whole) => part.minus(whole),
    formula: (part, whole) => `(${part} − ${whole}) ÷ ${whole}`,
  },
  lossAbove: {
    name: 'loss',
    of: (part, whole) => whole.minus(part),
    formula: (part, whole) => `(${whole} − ${part}) ÷ ${whole}`,
  },
};

/** Judges a figure by a limit of its own, with the working, in mm, degrees or a count. */
export function judgeLimit(criterion: LimitCriterion, part: ReadFigure): CriterionVerdict {
  const failed = isPast(criterion, part.value, Exact.of(criterion.limit));
  const { label, measures } = part.definition;
  const unit = UNITS_OF_FIGURE[measures][0];
  const inputs = [{ name: 'limit', value: criterion.limit, unit }];
  const result = { name: label, value: part.value.toString(), unit };
  return { failed, working: toWorking(criterion, { formula: label, inputs, result, failed }) };
}

/**
 * Judges a figure by its share in another, or by its growth or loss against another, with the working. Figures that
 * were both entered in one unit are shown in it, others in mm, degrees or a count.
 * @throws RangeError where `whole` is nought.
 */
export function judgeShare(criterion: ShareCriterion, part: ReadFigure, whole: ReadFigure): CriterionVerdict {
  const { name, of, formula } = SHARES[criterion.rule];
  const compared = of(part.value, whole.value);
  const failed = isPast(criterion, compared, Exact.of(criterion.limit).times(whole.value));
  // Rounded so that the share shown stands on the same side of the limit as the exact one.
  const rounding = criterion.atLimit === 'passes' ? 'up' : 'down';
  const share = compared.dividedBy(whole.value, { places: SHARE_PLACES, rounding });
  return {
    failed,
    working: toWorking(criterion, {
      formula: `${name} = ${formula(part.definition.label, whole.definition.label)}`,
      inputs: [...inOneUnit(part, whole), { name: 'limit', value: criterion.limit, unit: '' }],
      result: { name, value: share.toString(), unit: '' },
      failed,
    }),
  };
}

/**
 * True where one figure must be in another unit or place: a part that wears measures twice its size as new or more, one
 * that opens half of it or less, or a share in two units would fail in one: a cut of 1/4 in that is entered as 0.25 mm
 * of 2 in. Common practice, no source.
 */
export function isDoubtful(criterion: ShareCriterion, part: ReadFigure, whole: ReadFigure): boolean {
  if (criterion.rule === 'lossAbove') return !part.value.isLessThan(whole.value.times(TWO));
  if (criterion.rule === 'growthAbove') return !whole.value.isLessThan(part.value.times(TWO));
  const isPart = !whole.entered.isLessThan(part.entered);
  const limit = Exact.of(criterion.limit).times(whole.entered);
  return part.unit !== whole.unit && isPart && isPast(criterion, part.entered, limit);
}

const TWO = Exact.of('2');

function isPast({ atLimit }: Criterion, compared: Exact, limit: Exact): boolean {
  const difference = compared.compare(limit);
  return difference > 0 || (difference === 0 && atLimit === 'fails');
}

function inOneUnit(part: ReadFigure, whole: ReadFigure): Figure[] {
  const asEntered = part.unit === whole.unit;
  return [part, whole].map(({ definition, entered, unit, value }) => ({
    name: definition.label,
    value: (asEntered ? entered : value).toString(),
    unit: asEntered ? unit : UNITS_OF_FIGURE[definition.measures][0],
  }));
}

function toWorking(
  { atLimit, source }: Criterion,
  { formula, inputs, result, failed }: Pick<Working, 'formula' | 'inputs' | 'result'> & { failed: boolean },
): Working {
  const border = atLimit === 'passes' ? 'fails above the limit' : 'fails at the limit and above';
  return {
    title: `Measured ${result.name}`,
    formula: `${formula}; ${border}`,
    inputs,
    result,
    source: source.key,
    ...(failed && { caution: FAILS }),
  };
}
