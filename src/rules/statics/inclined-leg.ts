import { Exact } from '../quantities/exact.js';

/** Decimals of a need, rounded up, and of a rise, rounded down: a lower hook asks more of a leg. */
const NEED = { places: 6, rounding: 'up' } as const;
const RISE = { places: 6, rounding: 'down' } as const;

/** A straight leg from a fastening point up to a hook: how long it is, and how far to the side the hook hangs. */
export interface Leg {
  readonly lengthM: Exact;
  readonly runM: Exact;
}

/** The square of the tangent of the least angles that can be asked for: whole over whole, so that the verdict is exact. */
const TANGENT_SQUARED = {
  '30': { above: Exact.of('1'), below: Exact.of('3') },
  '45': { above: Exact.of('1'), below: Exact.of('1') },
  '60': { above: Exact.of('3'), below: Exact.of('1') },
} as const;

/** The least angle of a leg to the horizontal, in degrees. */
export type LeastAngle = keyof typeof TANGENT_SQUARED;

export function isLeastAngle(angleDeg: string): angleDeg is LeastAngle {
  return Object.hasOwn(TANGENT_SQUARED, angleDeg);
}

/** Whether a leg is longer than its run, so that its hook hangs above its fastening point at all. */
export function hasRise({ lengthM, runM }: Leg): boolean {
  return runM.isLessThan(lengthM);
}

/**
 * How high the hook hangs above the fastening point, in m: √(length² − run²), rounded down.
 * @throws RangeError for a leg that is shorter than its run.
 */
export function riseOf(leg: Leg): Exact {
  return riseSquared(leg).squareRoot(RISE);
}

/**
 * The tension in a leg, in kg hung: vertical share × length ÷ rise, rounded up. US Navy, NAVEDTRA 14081: what a leg may
 * carry is its straight rating × height ÷ length.
 * @throws RangeError for a leg without a rise of a millionth of a metre.
 */
export function legTension(shareKg: Exact, leg: Leg): Exact {
  return shareKg.times(leg.lengthM).dividedBy(riseOf(leg), NEED);
}

/**
 * The sideways pull at either end of a leg, in kg hung: vertical share × run ÷ rise, rounded up.
 * @throws RangeError for a leg without a rise of a millionth of a metre.
 */
export function horizontalPull(shareKg: Exact, leg: Leg): Exact {
  return shareKg.times(leg.runM).dividedBy(riseOf(leg), NEED);
}

/** Whether a leg stands at the least angle to the horizontal, or steeper: run² × tan² of the angle is not over rise². */
export function isSteepEnough(leg: Leg, leastDeg: LeastAngle): boolean {
  const { above, below } = TANGENT_SQUARED[leastDeg];
  const run = leg.runM.times(leg.runM).times(above);
  return run.compare(riseSquared(leg).times(below)) <= 0;
}

/** The shortest leg over `runM` that stands at the least angle, in m: run × √(1 + tan²), rounded up. */
export function leastLength(runM: Exact, leastDeg: LeastAngle): Exact {
  const { above, below } = TANGENT_SQUARED[leastDeg];
  const squared = runM.times(runM).times(above.plus(below));
  return squared.dividedBy(below, { places: 12, rounding: 'up' }).squareRoot(NEED);
}

function riseSquared({ lengthM, runM }: Leg): Exact {
  return lengthM.times(lengthM).minus(runM.times(runM));
}
