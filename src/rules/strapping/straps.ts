import type { Calculated, CalculationProblem, LiftedPanel } from '../calculations/calculation.js';
import { Exact } from '../quantities/exact.js';
import type { Working } from '../working.js';
import { strapForces, type StrapForces } from './strap-forces.js';
import { strapLengths, type StrapLengths } from './strap-lengths.js';

/** What straps to a lifter must hold and reach. */
export interface StrapsInput {
  readonly panels: readonly LiftedPanel[];
  /** From the carriage face to the back of the panel: what a strap passes round besides the panel. */
  readonly lifterDepthM: Exact;
  /** What a strap needs besides, to be pulled through its ratchet and held. */
  readonly strapTailM: Exact;
  /** The part of the weight that the panel may pull sideways with. */
  readonly sidewaysShare: Exact;
}

const NOUGHT = Exact.of('0');
const ONE = Exact.of('1');

/**
 * The lashing capacity and the length that the straps of a panel lifter need: two under the bottom rail and two round
 * the width of the panel for each lifter. A depth or tail that is not above 0, and a sideways share that is not above
 * 0 or is over 1, are problems `parameter_out_of_range`.
 * @throws RangeError when there is no panel, which a checked schedule rules out.
 */
export function straps(input: StrapsInput): Calculated<StrapForces & StrapLengths> {
  const problems = problemsOf(input);
  if (problems.length > 0) return { ok: false, problems };
  const forces = strapForces(input.panels, input.sidewaysShare);
  const lengths = strapLengths(input.panels, input);
  const workings: readonly Working[] = [...forces.workings, ...lengths.workings];
  return { ok: true, figures: { ...forces.figures, ...lengths.figures }, workings };
}

function problemsOf({ lifterDepthM, strapTailM, sidewaysShare }: StrapsInput): CalculationProblem[] {
  const code = 'parameter_out_of_range';
  const lengths = [
    { subject: 'lifterDepthM', length: lifterDepthM },
    { subject: 'strapTailM', length: strapTailM },
  ].filter(({ length }) => !NOUGHT.isLessThan(length));
  const shareFits = NOUGHT.isLessThan(sidewaysShare) && !ONE.isLessThan(sidewaysShare);
  return [
    ...lengths.map(({ subject, length }) => ({ code, subject, has: length.toString(), unit: 'm' }) as const),
    ...(shareFits ? [] : [{ code, subject: 'sidewaysShare', has: sidewaysShare.toString() } as const]),
  ];
}
