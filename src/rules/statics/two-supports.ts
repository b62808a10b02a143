import { Exact } from '../quantities/exact.js';

/** Decimals that a need keeps, rounded up: a milligram. */
const NEED = { places: 6, rounding: 'up' } as const;

/** How far a load's centre of gravity lies from each of two supports. Below nought it lies outside, beyond that support. */
export interface CentreDistances {
  readonly firstM: Exact;
  readonly secondM: Exact;
}

/** What each of two supports carries. Below nought the load lifts off that support: a caller must refuse it. */
export interface SupportShares {
  readonly firstKg: Exact;
  readonly secondKg: Exact;
}

/**
 * What two supports carry of a load between them, by the lever rule: the nearer one takes the more. The load is rounded
 * up to six places and so is each share, away from nought, so that the two never come to less than the load.
 *
 * Example: 420 kg that lie 0.6 m from the first and 1.2 m from the second put 280 kg and 140 kg on them.
 * @throws RangeError where the supports are not apart: the distances sum to nought or less.
 */
export function sharesOfTwoSupports(loadKg: Exact, { firstM, secondM }: CentreDistances): SupportShares {
  const apartM = firstM.plus(secondM);
  if (apartM.isZero() || apartM.isNegative()) throw new RangeError('two supports in one place share nothing');
  const wholeKg = loadKg.rounded(NEED);
  return {
    firstKg: wholeKg.times(secondM).dividedBy(apartM, NEED),
    secondKg: wholeKg.times(firstM).dividedBy(apartM, NEED),
  };
}

/** Two supports `apartM` apart, and a centre of gravity that lies `offsetM` from the middle between them, either way. */
export interface OffMiddle {
  readonly apartM: Exact;
  readonly offsetM: Exact;
}

/**
 * What the support nearer the centre of gravity carries, in kg: load × (apart ÷ 2 + offset) ÷ apart, rounded up.
 * @throws RangeError where the supports are not apart.
 */
export function heavierShare(loadKg: Exact, { apartM, offsetM }: OffMiddle): Exact {
  const half = apartM.times(HALF);
  const off = sizeOf(offsetM);
  return sharesOfTwoSupports(loadKg, { firstM: half.minus(off), secondM: half.plus(off) }).firstKg;
}

/** Whether the centre of gravity lies between the supports. On one of them it does not: the other carries nothing then. */
export function centreIsBetween({ apartM, offsetM }: OffMiddle): boolean {
  return sizeOf(offsetM).isLessThan(apartM.times(HALF));
}

/** A length without its direction. */
export function sizeOf(lengthM: Exact): Exact {
  return lengthM.isNegative() ? Exact.of('0').minus(lengthM) : lengthM;
}

const HALF = Exact.of('0.5');
