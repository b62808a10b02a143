import type { MethodDefinition } from '../lines/method.js';
import { Exact } from '../quantities/exact.js';
import type { Working } from '../working.js';
import { greatest } from './greatest.js';
import type { PanelLine } from './panel-line.js';

/** The margin on an estimated mass, as a method states it. */
export type EstimateMargin = MethodDefinition['estimateMargin'];

/** The mass of one panel, bare and packed, in kg, with the working. */
export interface PanelMass {
  readonly massKg: Exact;
  readonly packedKg: Exact;
  readonly workings: readonly Working[];
}

const METRES_PER_MM = Exact.of('0.001');
const CENTRE_IN_THE_MIDDLE = 'Its centre of gravity is not stated, and is taken in the middle of its height.';
const ESTIMATE = 'An estimate. Weigh a panel, or take the mass from the maker, before the lift.';

/**
 * The mass of one panel. A weighed mass is taken as it is, fittings and all; an areal mass times the face, with the
 * fittings that are stated apart, gives an estimate, and that is raised by the margin. Packing is added as stated.
 * Nothing is rounded.
 * @throws RangeError for a line that `checkSchedule` refuses because a figure cannot be read or no mass is given.
 */
export function panelMass(panel: PanelLine, margin: EstimateMargin): PanelMass {
  const bare = panel.massKg === undefined ? estimatedMass(panel, margin) : weighedMass(panel, panel.massKg);
  const packedKg = bare.massKg.plus(Exact.of(panel.packingKg));
  const packed: Working = {
    title: `Panel ${panel.name}: packed mass`,
    formula: 'mass + packing',
    inputs: [kg('mass', bare.massKg), kg('packing', Exact.of(panel.packingKg))],
    result: kg('packed mass', packedKg),
    source: 'common-practice',
  };
  return { massKg: bare.massKg, packedKg, workings: [bare.working, packed] };
}

function weighedMass(panel: PanelLine, massKg: string): { massKg: Exact; working: Working } {
  const mass = Exact.of(massKg);
  const working: Working = {
    title: `Panel ${panel.name}: mass`,
    formula: 'as weighed, no margin',
    inputs: [kg('weighed mass', mass)],
    result: kg('mass', mass),
    source: 'common-practice',
    ...cautionOf(panel),
  };
  return { massKg: mass, working };
}

function estimatedMass(panel: PanelLine, margin: EstimateMargin): { massKg: Exact; working: Working } {
  if (panel.arealMassKgPerM2 === undefined)
    throw new RangeError(`panel '${panel.name}' has no mass of either sort`);
  const height = Exact.of(panel.heightMm).times(METRES_PER_MM);
  const width = Exact.of(panel.widthMm).times(METRES_PER_MM);
  const board = Exact.of(panel.arealMassKgPerM2).times(height).times(width);
  const { fittingsKg } = panel;
  const estimate = fittingsKg === undefined ? board : board.plus(Exact.of(fittingsKg));
  const massKg = estimate.times(Exact.of('1').plus(Exact.of(margin.value)));
  const product = 'areal mass × height × width';
  const working: Working = {
    title: `Panel ${panel.name}: mass`,
    formula: `${fittingsKg === undefined ? product : `(${product} + fittings)`} × (1 + margin)`,
    inputs: [
      { name: 'areal mass', value: panel.arealMassKgPerM2, unit: 'kg/m2' },
      { name: 'height', value: height.toString(), unit: 'm' },
      { name: 'width', value: width.toString(), unit: 'm' },
      ...(fittingsKg === undefined ? [] : [kg('fittings', Exact.of(fittingsKg))]),
      { name: 'margin', value: margin.value, unit: '' },
    ],
    result: kg('mass', massKg),
    source: margin.source.key,
    ...cautionOf(panel, ESTIMATE),
  };
  return { massKg, working };
}

/** What is said of the mass, and that the centre of gravity is guessed where it is. */
function cautionOf({ centreOffsetMm }: PanelLine, ...said: string[]): Pick<Working, 'caution'> {
  const cautions = centreOffsetMm === undefined ? [...said, CENTRE_IN_THE_MIDDLE] : said;
  return cautions.length === 0 ? {} : { caution: cautions.join(' ') };
}

/** The panels of a schedule that rule: the heaviest bare, the heaviest packed and the thickest, which may be three. */
export interface RulingPanels {
  readonly heaviest: { readonly panel: PanelLine; readonly massKg: Exact };
  readonly heaviestPacked: { readonly panel: PanelLine; readonly packedKg: Exact };
  readonly thickest: { readonly panel: PanelLine; readonly thicknessMm: Exact };
  /** The workings of the heaviest bare and the heaviest packed panel, each once. */
  readonly workings: readonly Working[];
}

/**
 * The ruling panels of a schedule. Of equals the first one on the schedule rules.
 * @throws RangeError when the schedule is empty, or `checkSchedule` refuses a figure in it.
 */
export function rulingPanels(panels: readonly PanelLine[], margin: EstimateMargin): RulingPanels {
  const weighed = panels.map((panel) => ({ panel, ...panelMass(panel, margin) }));
  const heaviest = greatest(weighed, ({ massKg }) => massKg);
  const heaviestPacked = greatest(weighed, ({ packedKg }) => packedKg);
  const thickest = greatest(panels, ({ thicknessMm }) => Exact.of(thicknessMm));
  const workings =
    heaviest === heaviestPacked ? heaviest.workings : [...heaviest.workings, ...heaviestPacked.workings];
  return {
    heaviest: { panel: heaviest.panel, massKg: heaviest.massKg },
    heaviestPacked: { panel: heaviestPacked.panel, packedKg: heaviestPacked.packedKg },
    thickest: { panel: thickest, thicknessMm: Exact.of(thickest.thicknessMm) },
    workings,
  };
}

function kg(name: string, value: Exact): Working['result'] {
  return { name, value: value.toString(), unit: 'kg' };
}
