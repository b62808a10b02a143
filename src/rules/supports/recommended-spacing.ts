import { Exact } from '../quantities/exact.js';

const TWO = Exact.of('2');
const WHOLE_CM = { places: 2, rounding: 'down' } as const;

/**
 * How far apart two supports go under a panel that lies on its long edge, in m, down to whole centimetres. A beam of
 * even mass with an overhang a at each end bends by w a² ÷ 2 over a support and by w L² ÷ 8 − w L a ÷ 2 in the middle
 * (any textbook on the strength of materials). Both are the same, and the greatest as small as can be, where a is
 * (√2 − 1) ÷ 2 of the length: supports stand height × (2 − √2) apart. Never less than `leastSpacingM`.
 *
 * Example: a panel of 6 m goes on supports 3.51 m apart.
 */
export function recommendedSpacing(heightM: Exact, leastSpacingM: Exact): Exact {
  const rootOfTwoHeights = heightM.times(heightM).times(TWO).squareRoot({ places: 6, rounding: 'up' });
  const evenM = heightM.times(TWO).minus(rootOfTwoHeights).rounded(WHOLE_CM);
  return evenM.isLessThan(leastSpacingM) ? leastSpacingM : evenM;
}
