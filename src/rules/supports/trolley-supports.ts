import type { Calculated, CalculationProblem, LiftedPanel } from '../calculations/calculation.js';
import { notPositive, outOfRange } from '../calculations/not-positive.js';
import { greatest } from '../panels/greatest.js';
import { Exact } from '../quantities/exact.js';
import { centreIsBetween, heavierShare, sizeOf } from '../statics/two-supports.js';
import { recommendedSpacing } from './recommended-spacing.js';
import { trolleyWorkings, type StandingPanel } from './trolley-workings.js';

/** Panels that lie on their long edge on two trolleys each, at equal distances from the middle. */
export interface TrolleySupportsInput {
  readonly panels: readonly LiftedPanel[];
  readonly leastSpacingM: Exact;
  /** The distance between the trolleys that a job states for all its panels; each has its recommended one without. */
  readonly spacingM?: Exact;
  /** The most of a panel's height that may overhang one trolley. */
  readonly greatestOverhangShare: Exact;
  readonly castorsPerTrolley: Exact;
  readonly floorPointLimitKg?: Exact;
}

/** How far apart the trolleys of a panel go, and how far it then overhangs each. */
export interface PanelSupports {
  readonly name: string;
  readonly spacingM: Exact;
  readonly overhangM: Exact;
}

/** What standing on trolleys asks of them and of the floor; the spacing is that of the panel that rules. */
export interface TrolleyNeed {
  readonly trolleyLoadKg: Exact;
  readonly spacingM: Exact;
  readonly pointLoadKg: Exact;
  readonly perPanel: readonly PanelSupports[];
}

const ONE = Exact.of('1');
const HALF = Exact.of('0.5');
const NEED = { places: 6, rounding: 'up' } as const;

/**
 * The load on the heavier trolley of a panel and under one of its castors, and where the trolleys go. The load rules
 * that is the heaviest of all panels. Plain statics of a beam on two supports; common practice, no source.
 * @throws RangeError when there is no panel, which a checked schedule rules out.
 */
export function trolleySupports(input: TrolleySupportsInput): Calculated<TrolleyNeed> {
  const unusable = problemsOfFigures(input);
  if (unusable.length > 0) return { ok: false, problems: unusable };

  const standing = input.panels.map((panel) => stand(panel, input));
  const problems = [...problemOfSpacing(input), ...standing.flatMap((each) => problemsOf(each, input))];
  if (problems.length > 0) return { ok: false, problems };

  const ruling = greatest(standing, ({ trolleyLoadKg }) => trolleyLoadKg);
  const { trolleyLoadKg, spacingM, pointLoadKg } = ruling;
  const perPanel = standing.map((each) => ({
    name: each.panel.name,
    spacingM: each.spacingM,
    overhangM: each.overhangM,
  }));
  const figures = { trolleyLoadKg, spacingM, pointLoadKg, perPanel };
  return { ok: true, figures, workings: trolleyWorkings(input, ruling) };
}

function stand(panel: LiftedPanel, input: TrolleySupportsInput): StandingPanel {
  const spacingM = input.spacingM ?? recommendedSpacing(panel.heightM, input.leastSpacingM);
  const where = { apartM: spacingM, offsetM: panel.centreOffsetM };
  const trolleyLoadKg = heavierShare(panel.packedKg, where);
  return {
    panel,
    spacingM,
    overhangM: panel.heightM.minus(spacingM).times(HALF),
    trolleyLoadKg,
    pointLoadKg: trolleyLoadKg.dividedBy(input.castorsPerTrolley, NEED),
  };
}

function problemsOfFigures(input: TrolleySupportsInput): readonly CalculationProblem[] {
  const { leastSpacingM, spacingM, greatestOverhangShare, castorsPerTrolley, floorPointLimitKg } = input;
  const castors = castorsPerTrolley.toString();
  return [
    ...notPositive([
      ['leastSpacingM', leastSpacingM],
      ...(spacingM ? [['spacingM', spacingM] as const] : []),
      ['greatestOverhangShare', greatestOverhangShare],
      ...(floorPointLimitKg ? [['floorPointLimitKg', floorPointLimitKg] as const] : []),
    ]),
    // More than half of a panel cannot overhang: 25 would be a share in per cent, and would let anything pass.
    ...(HALF.isLessThan(greatestOverhangShare)
      ? [outOfRange('greatestOverhangShare', greatestOverhangShare.toString(), '0.5')]
      : []),
    ...(castorsPerTrolley.isLessThan(ONE) || castors.includes('.')
      ? [outOfRange('castorsPerTrolley', castors, '1')]
      : []),
  ];
}

function problemOfSpacing({ spacingM, leastSpacingM }: TrolleySupportsInput): readonly CalculationProblem[] {
  if (!spacingM?.isLessThan(leastSpacingM)) return [];
  const [needed, has] = [leastSpacingM.toString(), spacingM.toString()];
  return [{ code: 'supports_too_close', subject: 'spacingM', needed, has, unit: 'm' }];
}

/** Everything wrong with one panel on its trolleys. Needed is the limit, and has is what is there. */
function problemsOf(standing: StandingPanel, input: TrolleySupportsInput): readonly CalculationProblem[] {
  const { panel, spacingM, overhangM, pointLoadKg } = standing;
  const longestM = panel.heightM.times(input.greatestOverhangShare);
  const where = { apartM: spacingM, offsetM: panel.centreOffsetM };
  const limitKg = input.floorPointLimitKg;
  const problems: CalculationProblem[] = [];
  const add = (code: CalculationProblem['code'], needed: Exact, has: Exact, unit: 'm' | 'kg') =>
    problems.push({ code, subject: panel.name, needed: needed.toString(), has: has.toString(), unit });

  if (panel.heightM.isLessThan(spacingM)) add('spacing_longer_than_panel', panel.heightM, spacingM, 'm');
  if (longestM.isLessThan(overhangM)) add('overhang_too_long', longestM, overhangM, 'm');
  if (!centreIsBetween(where))
    add('centre_outside_supports', spacingM.times(HALF), sizeOf(panel.centreOffsetM), 'm');
  if (limitKg?.isLessThan(pointLoadKg)) add('floor_point_overloaded', limitKg, pointLoadKg, 'kg');
  return problems;
}
