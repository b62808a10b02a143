import type { LiftedPanel } from '../calculations/calculation.js';
import { greatest } from '../panels/greatest.js';
import { Exact } from '../quantities/exact.js';
import { massAsForce } from '../quantities/units.js';
import type { Working } from '../working.js';

/** The lashing capacity that one strap of each pair needs. */
export interface StrapForces {
  readonly underRailForceN: Exact;
  readonly roundWidthForceN: Exact;
}

const HALF = Exact.of('0.5');
const NEEDS = { places: 6, rounding: 'up' } as const;

const CAUTION = [
  'Lashing straps are not lifting accessories; the instructions of the lifter’s maker name the straps.',
  'Go by the lashing capacity on the label: a breaking force is not a lashing capacity.',
  'A strap in a loop is counted once, not double.',
].join(' ');

/**
 * What each strap must hold of the heaviest panel. The two under the bottom rail hold the whole weight between them as
 * if the lifter held none (common practice, no source); the two round the width hold `sidewaysShare` of it between
 * them, 0.5 for a load that does not tip (EN 12195-1).
 */
export function strapForces(
  panels: readonly LiftedPanel[],
  sidewaysShare: Exact,
): { readonly figures: StrapForces; readonly workings: readonly Working[] } {
  const { name, massKg } = greatest(panels, (panel) => panel.massKg);
  const { force, working } = massAsForce(massKg);
  const underRailForceN = force.times(HALF).rounded(NEEDS);
  const roundWidthForceN = force.times(sidewaysShare).times(HALF).rounded(NEEDS);
  const weight = newtons('weight', force);
  return {
    figures: { underRailForceN, roundWidthForceN },
    workings: [
      { ...working, title: `Panel ${name}: weight, its mass as force` },
      {
        title: `Panel ${name}: force in a strap under the bottom rail`,
        formula: 'weight ÷ 2',
        inputs: [weight],
        result: newtons('force in a strap under the bottom rail', underRailForceN),
        source: 'common-practice',
        caution: `The two straps hold the whole weight as if the lifter held none. ${CAUTION}`,
      },
      {
        title: `Panel ${name}: force in a strap round the width`,
        formula: 'weight × sideways share ÷ 2',
        inputs: [weight, { name: 'sideways share', value: sidewaysShare.toString(), unit: '' }],
        result: newtons('force in a strap round the width', roundWidthForceN),
        source: 'en-12195-1',
        caution: CAUTION,
      },
    ],
  };
}

function newtons(name: string, force: Exact): Working['result'] {
  return { name, value: force.toString(), unit: 'N' };
}
