import { join } from 'node:path';
import { loadCatalogue } from '../../src/catalogue/load-catalogue.js';
import { packageRoot } from '../../src/package-root.js';
import type { StatedParameter } from '../../src/rules/calculations/parameter.js';
import { gearLines, type GearLinesInput } from '../../src/rules/lines/gear-lines.js';
import type { JobCounts } from '../../src/rules/lines/job-counts.js';
import type { GearLine } from '../../src/rules/lines/need.js';
import type { PanelLine } from '../../src/rules/panels/panel-line.js';

/** The real catalogue, whose tall-panel method the tests work with. */
export const catalogue = loadCatalogue(join(packageRoot(), 'config'));

/** Two panels; the estimated one is the heavier by its margin. */
const PANELS: readonly PanelLine[] = [
  {
    name: 'A1',
    heightMm: '7450',
    widthMm: '1210',
    thicknessMm: '112',
    massKg: '478',
    packingKg: '22',
    count: 14,
  },
  {
    name: 'A2',
    heightMm: '7450',
    widthMm: '1210',
    thicknessMm: '112',
    arealMassKgPerM2: '52',
    packingKg: '22',
    count: 10,
  },
];
/** Two crews with one lifter and two persons aloft each, three panels on wheels, one truck. */
export const TWO_CREWS: JobCounts = { crews: 2, panelsOnWheels: 3, trucksUnloading: 1 };

/**
 * What the tall-panel method asks each job to state: the lifter weighs 180 kg and has its centre 200 mm out, the bar
 * goes up to 8.2 m.
 */
export const STATED: readonly StatedParameter[] = [
  { key: 'lifterMassKg', value: '180', reason: 'plate' },
  { key: 'lifterCentreMm', value: '200', reason: 'plate' },
  { key: 'liftHeightM', value: '8.2', reason: 'drawing' },
];

/** A job of the tall-panel method, changed as the test wants. */
export function job(changes: Partial<GearLinesInput> = {}): GearLinesInput {
  return {
    method: catalogue.method('tall-panel'),
    kinds: catalogue.kinds(),
    panels: PANELS,
    counts: TWO_CREWS,
    stated: STATED,
    adjustments: [],
    added: [],
    ...changes,
  };
}

/** The gear lines of a job that has no problem. */
export function linesOf(input: GearLinesInput): readonly GearLine[] {
  const result = gearLines(input);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.lines;
}

/** One gear line by its key. */
export function line(input: GearLinesInput, key: string): GearLine {
  const found = linesOf(input).find((each) => each.key === key);
  if (!found) throw new Error(`no line ${key}`);
  return found;
}

/** The problems of a job; none when it comes out well. */
export function problemsOf(input: GearLinesInput): unknown {
  const result = gearLines(input);
  return result.ok ? [] : result.problems;
}
