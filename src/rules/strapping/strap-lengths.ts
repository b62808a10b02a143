import type { LiftedPanel } from '../calculations/calculation.js';
import { greatest } from '../panels/greatest.js';
import { Exact } from '../quantities/exact.js';
import type { Working } from '../working.js';

/** The length that one strap of each pair needs. */
export interface StrapLengths {
  readonly underRailLengthM: Exact;
  readonly roundWidthLengthM: Exact;
}

/** What a strap passes round, and needs, besides the panel. */
interface Besides {
  readonly lifterDepthM: Exact;
  readonly strapTailM: Exact;
}

const TWO = Exact.of('2');

/**
 * What each strap must reach on the panel that asks for the longest. Under the bottom rail: from the lifter down one
 * face, under the rail and up the other. Round the width: the girth of panel and lifter. Common practice, no source.
 */
export function strapLengths(
  panels: readonly LiftedPanel[],
  besides: Besides,
): { readonly figures: StrapLengths; readonly workings: readonly Working[] } {
  const underRail = (panel: LiftedPanel) => underRailLength(panel, besides);
  const roundWidth = (panel: LiftedPanel) => roundWidthLength(panel, besides);
  const tallest = greatest(panels, underRail);
  const widest = greatest(panels, roundWidth);
  return {
    figures: { underRailLengthM: underRail(tallest), roundWidthLengthM: roundWidth(widest) },
    workings: [
      {
        title: `Panel ${tallest.name}: length of a strap under the bottom rail`,
        formula: '2 × (height ÷ 2) + thickness + lifter depth + tail',
        inputs: [metres('height', tallest.heightM), ...inputsOf(tallest, besides)],
        result: metres('length of a strap under the bottom rail', underRail(tallest)),
        source: 'common-practice',
        caution:
          'The lifter is taken to grip the panel in the middle of its height. For a grip above the middle add twice what it lies higher.',
      },
      {
        title: `Panel ${widest.name}: length of a strap round the width`,
        formula: '2 × (width + thickness + lifter depth) + tail',
        inputs: [metres('width', widest.widthM), ...inputsOf(widest, besides)],
        result: metres('length of a strap round the width', roundWidth(widest)),
        source: 'common-practice',
      },
    ],
  };
}

/** Twice half the height is the height. */
function underRailLength({ heightM, thicknessM }: LiftedPanel, { lifterDepthM, strapTailM }: Besides): Exact {
  return heightM.plus(thicknessM).plus(lifterDepthM).plus(strapTailM);
}

function roundWidthLength({ widthM, thicknessM }: LiftedPanel, { lifterDepthM, strapTailM }: Besides): Exact {
  return widthM.plus(thicknessM).plus(lifterDepthM).times(TWO).plus(strapTailM);
}

function inputsOf({ thicknessM }: LiftedPanel, { lifterDepthM, strapTailM }: Besides): Working['inputs'] {
  return [metres('thickness', thicknessM), metres('lifter depth', lifterDepthM), metres('tail', strapTailM)];
}

function metres(name: string, length: Exact): Working['result'] {
  return { name, value: length.toString(), unit: 'm' };
}
