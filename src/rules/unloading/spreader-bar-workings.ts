import type { LiftedPanel } from '../calculations/calculation.js';
import type { Exact } from '../quantities/exact.js';
import { sizeOf } from '../statics/two-supports.js';
import type { Figure, Working } from '../working.js';
import type { RiggedBar, SpreaderBarNeed } from './rigged-bar.js';

/** What came out of a spreader bar, and the panels that rule it: the heaviest, and the one that bears most on one drop. */
export interface SpreaderBarResult extends SpreaderBarNeed {
  readonly heaviest: LiftedPanel;
  readonly uneven: LiftedPanel;
  readonly riseM: Exact;
}

/** The steps of the arithmetic of a spreader bar, in order. */
export function spreaderBarWorkings(bar: RiggedBar, result: SpreaderBarResult): readonly Working[] {
  return [
    barWorking(bar, result),
    dropWorking(bar, result),
    riseWorking(bar, result),
    tensionWorking(bar, result),
    compressionWorking(bar, result),
  ];
}

function barWorking({ handlingFactor }: RiggedBar, { heaviest, barLoadKg }: SpreaderBarResult): Working {
  return {
    title: `Panel ${heaviest.name}: load under the spreader bar`,
    formula: 'packed mass × handling factor',
    inputs: [kg('packed mass', heaviest.packedKg), figure('handling factor', handlingFactor, '')],
    result: kg('load under the bar', barLoadKg),
    source: 'common-practice',
    caution: "One panel at a time. The maker's plate of the bar governs, for the span that is used.",
  };
}

function dropWorking(bar: RiggedBar, { uneven, dropLoadKg }: SpreaderBarResult): Working {
  return {
    title: `Panel ${uneven.name}: load at the heavier drop sling`,
    formula: 'packed mass × handling factor × (drop spacing ÷ 2 + centre offset) ÷ drop spacing',
    inputs: [
      kg('packed mass', uneven.packedKg),
      figure('handling factor', bar.handlingFactor, ''),
      metres('drop spacing', bar.dropSpacingM),
      metres('centre offset', sizeOf(uneven.centreOffsetM)),
    ],
    result: kg('load at the heavier drop', dropLoadKg),
    source: 'common-practice',
    caution:
      'Drop slings hang straight down, at equal distances from the middle of the panel. A sling that is choked or laid ' +
      'round the panel needs its own mode factor on top.',
  };
}

function riseWorking(bar: RiggedBar, { riseM }: SpreaderBarResult): Working {
  return {
    title: 'Rise of the hook above the spreader bar',
    formula: '√(leg length² − (drop spacing ÷ 2)²)',
    inputs: [metres('leg length', bar.topLegLengthM), metres('drop spacing', bar.dropSpacingM)],
    result: metres('rise', riseM),
    source: 'common-practice',
    caution:
      'The top legs are equal and made fast above the drop slings. The load moves until its centre of gravity hangs ' +
      'under the hook: where the bar tilts, set the load down and rig it anew.',
  };
}

function tensionWorking(bar: RiggedBar, result: SpreaderBarResult): Working {
  return {
    title: `Panel ${result.uneven.name}: tension in a top leg`,
    formula: '(load at the heavier drop + mass of the bar ÷ 2) × leg length ÷ rise',
    inputs: [
      ...endInputs(bar, result),
      metres('leg length', bar.topLegLengthM),
      metres('rise', result.riseM),
    ],
    result: kg('tension in a top leg', result.topLegLoadKg),
    source: 'us-navy-14081',
    caution:
      'Only two legs are counted, however many there are. A leg flatter than the least angle is refused.',
  };
}

function compressionWorking(bar: RiggedBar, result: SpreaderBarResult): Working {
  return {
    title: `Panel ${result.uneven.name}: compression in the spreader bar`,
    formula: '(load at the heavier drop + mass of the bar ÷ 2) × (drop spacing ÷ 2) ÷ rise',
    inputs: [
      ...endInputs(bar, result),
      metres('drop spacing', bar.dropSpacingM),
      metres('rise', result.riseM),
    ],
    result: kg('compression in the bar', result.barCompressionKg),
    source: 'common-practice',
    caution:
      "For a competent person to hold against the maker's data of the bar at this span; no gear is rated by it.",
  };
}

function endInputs({ spreaderBarMassKg }: RiggedBar, { dropLoadKg }: SpreaderBarResult): readonly Figure[] {
  return [kg('load at the heavier drop', dropLoadKg), kg('mass of the bar', spreaderBarMassKg)];
}

function figure(name: string, value: Exact, unit: string): Figure {
  return { name, value: value.toString(), unit };
}

function kg(name: string, value: Exact): Figure {
  return figure(name, value, 'kg');
}

function metres(name: string, value: Exact): Figure {
  return figure(name, value, 'm');
}
