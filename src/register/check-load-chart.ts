import type { FieldError } from '../problem.js';
import type { KindDefinition } from '../rules/gear/kind.js';
import {
  CHART_RANGES,
  checkChart,
  type ChartFigure,
  type ChartProblem,
} from '../rules/hosting/check-chart.js';
import type { LoadChart } from '../rules/hosting/load-chart.js';

/** Whether the kind carries by a load chart, and the chart can be read. */
export function checkLoadChart(chart: LoadChart | undefined, kind: KindDefinition): FieldError[] {
  if (!chart) return [];
  if (kind.loadChart !== true)
    return [{ field: 'loadChart', message: `${kind.plural} carry by no load chart: leave it out` }];
  return checkChart(chart).map((problem) => ({
    field: fieldOf(problem),
    message: MESSAGES[problem.code](problem),
  }));
}

function fieldOf({ code, point, figure }: ChartProblem): string {
  if (code === 'cover_without_reference') return 'loadChart.attachmentCover.reference';
  if (point === undefined) return figure === undefined ? 'loadChart.points' : `loadChart.${figure}`;
  return `loadChart.points[${point}]${figure === undefined ? '' : `.${figure}`}`;
}

const MESSAGES: Readonly<Record<ChartProblem['code'], (problem: ChartProblem) => string>> = {
  too_few_points: () => 'write two points at least: one alone does not say how the capacity falls',
  not_a_figure: range,
  out_of_range: range,
  repeated_point: ({ other }) =>
    `states the same height and distance as point ${number(other)}: keep one of them`,
  out_of_order: ({ other }) =>
    `comes before point ${number(other)}: write the points by rising height, and by rising distance at each height`,
  capacity_rises: ({ other }) =>
    `carries more than point ${number(other)}, though it is no lower and no nearer: read the chart again`,
  axle_distance_missing: () =>
    'measure it, or take it from the data sheet: a chart by load centres needs it to count the lifter',
  carriage_ahead_of_forks: () =>
    'is farther out than the fork face, which stands in front of the carriage: the two may be swapped',
  cover_without_reference: () => 'write what the plate or the letter is found by',
};

function range({ figure = 'capacityKg' }: ChartProblem): string {
  const { least, most } = CHART_RANGES[figure];
  return `write the ${FIGURE_WORDS[figure]} as a plain decimal number from ${least} to ${most}`;
}

const FIGURE_WORDS: Readonly<Record<ChartFigure, string>> = {
  heightMm: 'height in mm',
  distanceMm: 'load centre or reach in mm',
  capacityKg: 'capacity in kg',
  axleToForkFaceMm: 'distance from front axle to fork face in mm',
  axleToCarriageMm: 'distance from front axle to carriage face in mm',
};

/** A place as people count. */
function number(place = 0): string {
  return String(place + 1);
}
