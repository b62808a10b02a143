import type { MethodDefinition } from '../lines/method.js';
import { Exact } from '../quantities/exact.js';
import type { Working } from '../working.js';
import type { PanelLine } from './panel-line.js';

/** The margin on an estimated mass, as a method states it. */
export type EstimateMargin = MethodDefinition['estimateMargin'];

/** The mass of one panel, bare and packed, in kg, with the working. */
export interface PanelMass {
  readonly massKg: Exact;
  readonly packedKg: Exact;
  readonly workings: readonly Working[];
}

const SQUARE_METRES_PER_SQUARE_MM = Exact.of('0.000001');

/**
 * The mass of one panel. A weighed mass is taken as it is; an areal mass times the face gives an estimate, and that
 * is raised by the margin. Packing is added as stated. Nothing is rounded.
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
  };
  return { massKg: mass, working };
}

function estimatedMass(panel: PanelLine, margin: EstimateMargin): { massKg: Exact; working: Working } {
  if (panel.arealMassKgPerM2 === undefined)
    throw new RangeError(`panel '${panel.name}' has no mass of either sort`);
  const face = Exact.of(panel.heightMm).times(Exact.of(panel.widthMm)).times(SQUARE_METRES_PER_SQUARE_MM);
  const estimate = Exact.of(panel.arealMassKgPerM2).times(face);
  const massKg = estimate.times(Exact.of('1').plus(Exact.of(margin.value)));
  const working: Working = {
    title: `Panel ${panel.name}: mass`,
    formula: 'areal mass × height × width × (1 + margin)',
    inputs: [
      { name: 'areal mass', value: panel.arealMassKgPerM2, unit: 'kg/m2' },
      { name: 'height', value: panel.heightMm, unit: 'mm' },
      { name: 'width', value: panel.widthMm, unit: 'mm' },
      { name: 'margin', value: margin.value, unit: '' },
    ],
    result: kg('mass', massKg),
    source: margin.source.key,
    caution: 'An estimate. Weigh a panel, or take the mass from the maker, before the lift.',
  };
  return { massKg, working };
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

function greatest<Entry>(entries: readonly Entry[], sizeOf: (entry: Entry) => Exact): Entry {
  const [first, ...others] = entries;
  if (first === undefined) throw new RangeError('a schedule without panels has no heaviest one');
  return others.reduce((best, entry) => (sizeOf(best).isLessThan(sizeOf(entry)) ? entry : best), first);
}

function kg(name: string, value: Exact): Working['result'] {
  return { name, value: value.toString(), unit: 'kg' };
}
