import type { Calculated, LiftedPanel } from '../calculations/calculation.js';
import { greatest } from '../panels/greatest.js';
import { Exact } from '../quantities/exact.js';
import type { Working } from '../working.js';

const NOUGHT = Exact.of('0');

/**
 * How high the floor of a work platform must go for its crew to reach the top of the tallest panel; 0 where they reach
 * it from the ground. A reach below 0 is the problem `parameter_out_of_range`. Common practice, no source.
 * @throws RangeError when there is no panel, which a checked schedule rules out.
 */
export function platformHeight({
  panels,
  platformReachM,
}: {
  readonly panels: readonly LiftedPanel[];
  readonly platformReachM: Exact;
}): Calculated<{ platformHeightM: Exact }> {
  if (platformReachM.isNegative()) {
    const has = platformReachM.toString();
    return {
      ok: false,
      problems: [{ code: 'parameter_out_of_range', subject: 'platformReachM', needed: '0', has, unit: 'm' }],
    };
  }
  const { name, heightM } = greatest(panels, (panel) => panel.heightM);
  const above = heightM.minus(platformReachM);
  const platformHeightM = above.isNegative() ? NOUGHT : above;
  const working: Working = {
    title: `Panel ${name}: height of the platform`,
    formula: 'height − reach, at least 0',
    inputs: [metres('height', heightM), metres('reach', platformReachM)],
    result: metres('height of the platform', platformHeightM),
    source: 'common-practice',
    caution:
      'Compare it with the height of the platform floor: a working height as makers state it has a reach in it already.',
  };
  return { ok: true, figures: { platformHeightM }, workings: [working] };
}

function metres(name: string, length: Exact): Working['result'] {
  return { name, value: length.toString(), unit: 'm' };
}
