import { Exact } from '../quantities/exact.js';
import type { PanelLine } from './panel-line.js';

export const SCHEDULE_PROBLEM_CODES = [
  'no_panels',
  'blank_name',
  'not_a_number',
  'too_small',
  'too_large',
  'mass_missing',
  'mass_given_twice',
  'fittings_in_weighed_mass',
  'centre_outside_panel',
  'count_out_of_range',
] as const;
export type ScheduleProblemCode = (typeof SCHEDULE_PROBLEM_CODES)[number];

/** One thing wrong with a panel schedule. `line` counts from 0; `least` and `most` are the limits, both allowed. */
export interface ScheduleProblem {
  readonly code: ScheduleProblemCode;
  readonly line?: number;
  readonly field?: keyof PanelLine;
  readonly least?: string;
  readonly most?: string;
}

type Figure = Exclude<keyof PanelLine, 'name' | 'count'>;

/**
 * What a tall wall panel can be at all. Far wider than any panel made, so that only slips are caught: metres written
 * as millimetres, pounds as kilograms, a point lost. Common practice, no source.
 */
const LIMITS: Readonly<Record<Figure, { readonly least: string; readonly most: string }>> = {
  heightMm: { least: '500', most: '20000' },
  widthMm: { least: '100', most: '6000' },
  thicknessMm: { least: '10', most: '500' },
  packingKg: { least: '0', most: '1000' },
  massKg: { least: '1', most: '5000' },
  arealMassKgPerM2: { least: '1', most: '300' },
  fittingsKg: { least: '0', most: '1000' },
  centreOffsetMm: { least: '0', most: '10000' },
};
const MOST_PANELS = 10_000;
const ALWAYS_GIVEN = ['heightMm', 'widthMm', 'thicknessMm', 'packingKg'] as const;
const TWO = Exact.of('2');
const DECIMAL = /^-?\d+(\.\d+)?$/;

/** Every problem of a schedule, line by line; an empty list means that its masses can be worked out. */
export function checkSchedule(panels: readonly PanelLine[]): readonly ScheduleProblem[] {
  if (panels.length === 0) return [{ code: 'no_panels' }];
  return panels.flatMap((panel, line) => checkLine(panel).map((problem) => ({ ...problem, line })));
}

function checkLine(panel: PanelLine): ScheduleProblem[] {
  const problems: ScheduleProblem[] = [];
  if (panel.name.trim() === '') problems.push({ code: 'blank_name', field: 'name' });
  for (const field of ALWAYS_GIVEN) problems.push(...checkFigure(field, panel[field]));
  problems.push(...checkMass(panel), ...checkFittings(panel), ...checkCentre(panel));
  if (!Number.isInteger(panel.count) || panel.count < 1 || panel.count > MOST_PANELS) {
    problems.push({ code: 'count_out_of_range', field: 'count', least: '1', most: String(MOST_PANELS) });
  }
  return problems;
}

function checkMass({ massKg, arealMassKgPerM2 }: PanelLine): ScheduleProblem[] {
  if (massKg !== undefined && arealMassKgPerM2 !== undefined)
    return [{ code: 'mass_given_twice', field: 'massKg' }];
  if (massKg !== undefined) return checkFigure('massKg', massKg);
  if (arealMassKgPerM2 !== undefined) return checkFigure('arealMassKgPerM2', arealMassKgPerM2);
  return [{ code: 'mass_missing', field: 'massKg' }];
}

function checkFittings({ massKg, arealMassKgPerM2, fittingsKg }: PanelLine): ScheduleProblem[] {
  if (fittingsKg === undefined) return [];
  const weighed = massKg !== undefined && arealMassKgPerM2 === undefined;
  if (weighed) return [{ code: 'fittings_in_weighed_mass', field: 'fittingsKg' }];
  return checkFigure('fittingsKg', fittingsKg);
}

function checkCentre({ heightMm, centreOffsetMm }: PanelLine): ScheduleProblem[] {
  if (centreOffsetMm === undefined) return [];
  const problems = checkFigure('centreOffsetMm', centreOffsetMm);
  if (problems.length > 0 || !DECIMAL.test(heightMm)) return problems;
  if (Exact.of(centreOffsetMm).times(TWO).isLessThan(Exact.of(heightMm))) return [];
  return [{ code: 'centre_outside_panel', field: 'centreOffsetMm' }];
}

function checkFigure(field: Figure, text: string): ScheduleProblem[] {
  if (!DECIMAL.test(text)) return [{ code: 'not_a_number', field }];
  const { least, most } = LIMITS[field];
  if (Exact.of(text).isLessThan(Exact.of(least))) return [{ code: 'too_small', field, least, most }];
  if (Exact.of(most).isLessThan(Exact.of(text))) return [{ code: 'too_large', field, least, most }];
  return [];
}
