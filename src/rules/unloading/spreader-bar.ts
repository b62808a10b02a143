import type { Calculated, CalculationProblem, LiftedPanel } from '../calculations/calculation.js';
import { notPositive, outOfRange } from '../calculations/not-positive.js';
import { greatest } from '../panels/greatest.js';
import { Exact } from '../quantities/exact.js';
import {
  hasRise,
  horizontalPull,
  isLeastAngle,
  isSteepEnough,
  leastLength,
  legTension,
  riseOf,
  type Leg,
} from '../statics/inclined-leg.js';
import { centreIsBetween, heavierShare, sizeOf } from '../statics/two-supports.js';
import type { RiggedBar, SpreaderBarNeed } from './rigged-bar.js';
import { spreaderBarWorkings } from './spreader-bar-workings.js';

/** What unloading starts from. */
export interface SpreaderBarInput extends RiggedBar {
  readonly panels: readonly LiftedPanel[];
  /** The least angle of a top leg to the horizontal: '30', '45' or '60'. */
  readonly leastLegAngleDeg: string;
}

const ONE = Exact.of('1');
const HALF = Exact.of('0.5');
const NEED = { places: 6, rounding: 'up' } as const;

/**
 * The load on a spreader bar, at its heavier drop sling, in a top leg and along the bar. A panel hangs with its packing,
 * times the handling factor; the heavier end takes its share by the lever rule and half the bar. With equal legs a bar
 * that tilts towards the heavier end pulls less than this on the leg there, never more. Plain statics; the least angle
 * is the matter of US Navy, NAVEDTRA 14081.
 * @throws RangeError when there is no panel, which a checked schedule rules out.
 */
export function spreaderBar(input: SpreaderBarInput): Calculated<SpreaderBarNeed> {
  const leg: Leg = { lengthM: input.topLegLengthM, runM: input.dropSpacingM.times(HALF) };
  const unusable = problemsOfFigures(input);
  const problems =
    unusable.length > 0 ? unusable : [...problemsOfLeg(leg, input), ...problemsOfPanels(input)];
  if (problems.length > 0) return { ok: false, problems };

  const heaviest = greatest(input.panels, ({ packedKg }) => packedKg);
  const uneven = greatest(input.panels, (panel) => dropLoad(panel, input));
  const dropLoadKg = dropLoad(uneven, input);
  const endLoadKg = dropLoadKg.plus(input.spreaderBarMassKg.times(HALF));
  const figures: SpreaderBarNeed = {
    barLoadKg: heaviest.packedKg.times(input.handlingFactor).rounded(NEED),
    dropLoadKg,
    topLegLoadKg: legTension(endLoadKg, leg),
    barCompressionKg: horizontalPull(endLoadKg, leg),
  };
  const workings = spreaderBarWorkings(input, { heaviest, uneven, riseM: riseOf(leg), ...figures });
  return { ok: true, figures, workings };
}

function dropLoad({ packedKg, centreOffsetM }: LiftedPanel, input: SpreaderBarInput): Exact {
  const where = { apartM: input.dropSpacingM, offsetM: centreOffsetM };
  return heavierShare(packedKg.times(input.handlingFactor), where);
}

function problemsOfFigures(input: SpreaderBarInput): readonly CalculationProblem[] {
  const { handlingFactor, spreaderBarMassKg, dropSpacingM, topLegLengthM, leastLegAngleDeg } = input;
  return [
    ...(handlingFactor.isLessThan(ONE) ? [outOfRange('handlingFactor', handlingFactor.toString(), '1')] : []),
    ...notPositive([
      ['spreaderBarMassKg', spreaderBarMassKg],
      ['dropSpacingM', dropSpacingM],
      ['topLegLengthM', topLegLengthM],
    ]),
    ...(isLeastAngle(leastLegAngleDeg) ? [] : [outOfRange('leastLegAngleDeg', leastLegAngleDeg)]),
  ];
}

/** A leg that does not reach the hook, or stands too flat. What is needed is the length to be longer than, or the least. */
function problemsOfLeg(leg: Leg, { leastLegAngleDeg }: SpreaderBarInput): readonly CalculationProblem[] {
  const has = { subject: 'topLegLengthM', has: leg.lengthM.toString(), unit: 'm' };
  if (!hasRise(leg)) return [{ code: 'leg_too_short', needed: leg.runM.toString(), ...has }];
  if (!isLeastAngle(leastLegAngleDeg) || isSteepEnough(leg, leastLegAngleDeg)) return [];
  return [{ code: 'leg_too_flat', needed: leastLength(leg.runM, leastLegAngleDeg).toString(), ...has }];
}

function problemsOfPanels({ panels, dropSpacingM: apartM }: SpreaderBarInput): readonly CalculationProblem[] {
  const unit = 'm';
  return panels.flatMap(({ name: subject, heightM, centreOffsetM: offsetM }) => {
    const problems: CalculationProblem[] = [];
    if (heightM.isLessThan(apartM)) {
      const [needed, has] = [heightM.toString(), apartM.toString()];
      problems.push({ code: 'spacing_longer_than_panel', subject, needed, has, unit });
    }
    if (!centreIsBetween({ apartM, offsetM })) {
      const [needed, has] = [apartM.times(HALF).toString(), sizeOf(offsetM).toString()];
      problems.push({ code: 'centre_outside_supports', subject, needed, has, unit });
    }
    return problems;
  });
}
