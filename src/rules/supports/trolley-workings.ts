import type { LiftedPanel } from '../calculations/calculation.js';
import type { Exact } from '../quantities/exact.js';
import { sizeOf } from '../statics/two-supports.js';
import type { Figure, Working } from '../working.js';
import { recommendedSpacing } from './recommended-spacing.js';

/** One panel where it stands on its trolleys. */
export interface StandingPanel {
  readonly panel: LiftedPanel;
  readonly spacingM: Exact;
  readonly overhangM: Exact;
  readonly trolleyLoadKg: Exact;
  readonly pointLoadKg: Exact;
}

/** The figures of a job that its workings name. */
export interface TrolleyFigures {
  readonly leastSpacingM: Exact;
  readonly castorsPerTrolley: Exact;
}

/** The steps of the arithmetic of the panel that rules, in order. */
export function trolleyWorkings(figures: TrolleyFigures, ruling: StandingPanel): readonly Working[] {
  return [
    spacingWorking(figures, ruling),
    overhangWorking(ruling),
    loadWorking(ruling),
    pointWorking(figures, ruling),
  ];
}

function spacingWorking({ leastSpacingM }: TrolleyFigures, { panel }: StandingPanel): Working {
  return {
    title: `Panel ${panel.name}: recommended distance between the trolleys`,
    formula: 'height × (2 − √2), down to whole centimetres, and not under the least spacing',
    inputs: [metres('height', panel.heightM), metres('least spacing', leastSpacingM)],
    result: metres('recommended spacing', recommendedSpacing(panel.heightM, leastSpacingM)),
    source: 'common-practice',
    caution:
      'For a panel of even mass and stiffness: it then bends as much over the trolleys as in its middle. Support points ' +
      'that the maker of the panel states govern.',
  };
}

function overhangWorking({ panel, spacingM, overhangM }: StandingPanel): Working {
  return {
    title: `Panel ${panel.name}: overhang at each end`,
    formula: '(height − spacing) ÷ 2',
    inputs: [metres('height', panel.heightM), metres('spacing', spacingM)],
    result: metres('overhang', overhangM),
    source: 'common-practice',
  };
}

function loadWorking({ panel, spacingM, trolleyLoadKg }: StandingPanel): Working {
  return {
    title: `Panel ${panel.name}: load on the heavier trolley`,
    formula: 'packed mass × (spacing ÷ 2 + centre offset) ÷ spacing',
    inputs: [
      kg('packed mass', panel.packedKg),
      metres('spacing', spacingM),
      metres('centre offset', sizeOf(panel.centreOffsetM)),
    ],
    result: kg('load on the heavier trolley', trolleyLoadKg),
    source: 'common-practice',
    caution: 'On a level floor. A slope or a threshold puts nearly all of the panel on one trolley.',
  };
}

function pointWorking({ castorsPerTrolley }: TrolleyFigures, standing: StandingPanel): Working {
  return {
    title: `Panel ${standing.panel.name}: load under one castor`,
    formula: 'load on the heavier trolley ÷ castors',
    inputs: [
      kg('load on the heavier trolley', standing.trolleyLoadKg),
      figure('castors', castorsPerTrolley, ''),
    ],
    result: kg('load under one castor', standing.pointLoadKg),
    source: 'common-practice',
    caution:
      "The trolley's own mass is not in it. On an uneven floor fewer castors carry. The limit that the owner of the " +
      'floor states governs; where nobody states one, ask.',
  };
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
