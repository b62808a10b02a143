import { isParameterKey, PARAMETERS, type CalculationKey, type ParameterKey } from './parameter.js';

/**
 * Every figure that a line can be rated or sized by, with its unit, what it is called in a working, and the
 * calculation that gives it; those of the panels alone need none.
 */
export const LIFT_FIGURES = {
  heaviestPanelKg: { unit: 'kg', name: 'mass of the heaviest panel' },
  heaviestPackedKg: { unit: 'kg', name: 'packed mass of the heaviest packed panel' },
  lifterLoadKg: { unit: 'kg', name: 'heaviest lift', from: 'lifting' },
  thickestMm: { unit: 'mm', name: 'thickest panel', from: 'lifting' },
  thinnestMm: { unit: 'mm', name: 'thinnest panel', from: 'lifting' },
  barLoadKg: { unit: 'kg', name: 'load under the bar', from: 'unloading' },
  dropLoadKg: { unit: 'kg', name: 'load at the heavier drop', from: 'unloading' },
  topLegLoadKg: { unit: 'kg', name: 'tension in a top leg', from: 'unloading' },
  underRailForceN: { unit: 'N', name: 'force in a strap under the bottom rail', from: 'strapping' },
  roundWidthForceN: { unit: 'N', name: 'force in a strap round the width', from: 'strapping' },
  underRailLengthM: { unit: 'm', name: 'length of a strap under the bottom rail', from: 'strapping' },
  roundWidthLengthM: { unit: 'm', name: 'length of a strap round the width', from: 'strapping' },
  trolleyLoadKg: { unit: 'kg', name: 'load on the heavier trolley', from: 'supports' },
  hostLoadKg: { unit: 'kg', name: 'load on the host machine', from: 'hosting' },
  safetyLineLengthM: { unit: 'm', name: 'length of a safety line', from: 'steadying' },
  platformHeightM: { unit: 'm', name: 'height of the platform', from: 'platform' },
} as const satisfies Readonly<
  Record<string, { readonly unit: string; readonly name: string; readonly from?: CalculationKey }>
>;
export type LiftFigure = keyof typeof LIFT_FIGURES;

/** What a size can be held against: a figure of a calculation, or a parameter as it is. */
export type FigureKey = LiftFigure | ParameterKey;

export const LIFT_FIGURE_KEYS = Object.keys(LIFT_FIGURES).filter(isLiftFigure);

export function isLiftFigure(key: string): key is LiftFigure {
  return Object.hasOwn(LIFT_FIGURES, key);
}

/** The unit of a figure, and the calculation that gives it; undefined for one of the panels alone. */
export function originOf(key: FigureKey): { readonly unit: string; readonly from?: CalculationKey } {
  if (isParameterKey(key)) return { unit: PARAMETERS[key].unit, from: PARAMETERS[key].group };
  return LIFT_FIGURES[key];
}
