import { Exact } from '../quantities/exact.js';
import type { ChartPoint, LoadChart } from './load-chart.js';

/** Everything that keeps a chart from being read. The codes are API. */
export const CHART_PROBLEM_CODES = [
  'too_few_points',
  'not_a_figure',
  'out_of_range',
  'repeated_point',
  'out_of_order',
  'capacity_rises',
  'axle_distance_missing',
  'carriage_ahead_of_forks',
  'cover_without_reference',
] as const;
export type ChartProblemCode = (typeof CHART_PROBLEM_CODES)[number];

export type ChartFigure = keyof ChartPoint | 'axleToForkFaceMm' | 'axleToCarriageMm';

/** One thing wrong with a chart, as data: a view makes the sentence. */
export interface ChartProblem {
  readonly code: ChartProblemCode;
  /** The place of the point in the chart, from nought; absent for what concerns no point. */
  readonly point?: number;
  /** The place of the earlier point that it does not agree with. */
  readonly other?: number;
  readonly figure?: ChartFigure;
}

/** The least and the most that are believed of each figure: beyond them someone slipped a digit or a unit. Common practice, no source. */
export const CHART_RANGES: Readonly<Record<ChartFigure, { readonly least: string; readonly most: string }>> =
  {
    heightMm: { least: '0', most: '30000' },
    distanceMm: { least: '100', most: '20000' },
    capacityKg: { least: '1', most: '60000' },
    axleToForkFaceMm: { least: '1', most: '5000' },
    axleToCarriageMm: { least: '1', most: '5000' },
  };

/** Every problem of a chart. One without any may be read by the rules of this folder. */
export function checkChart(chart: LoadChart): ChartProblem[] {
  const problems: ChartProblem[] = [];
  if (chart.points.length < 2) problems.push({ code: 'too_few_points' });
  for (const [point, figures] of chart.points.entries()) {
    for (const figure of ['heightMm', 'distanceMm', 'capacityKg'] as const) {
      const code = problemOf(figure, figures[figure]);
      if (code) problems.push({ code, point, figure });
    }
  }
  if (problems.every(({ point }) => point === undefined)) problems.push(...comparePoints(chart.points));
  return [...problems, ...checkAxle(chart), ...checkCover(chart)];
}

function problemOf(figure: ChartFigure, text: string): 'not_a_figure' | 'out_of_range' | undefined {
  if (!/^\d{1,12}(\.\d{1,9})?$/.test(text)) return 'not_a_figure';
  const [value, { least, most }] = [Exact.of(text), CHART_RANGES[figure]];
  const isWithin = value.compare(Exact.of(least)) >= 0 && value.compare(Exact.of(most)) <= 0;
  return isWithin ? undefined : 'out_of_range';
}

interface Place {
  readonly height: Exact;
  readonly distance: Exact;
  readonly capacity: Exact;
}

/** What each point says against those before it and, as higher or farther never carries more, against all others. */
function comparePoints(points: readonly ChartPoint[]): ChartProblem[] {
  const places = points.map(({ heightMm, distanceMm, capacityKg }) => ({
    height: Exact.of(heightMm),
    distance: Exact.of(distanceMm),
    capacity: Exact.of(capacityKg),
  }));
  return places.flatMap((place, point) => {
    const earlier = places.slice(0, point);
    const repeated = earlier.findIndex((other) => isSame(other, place));
    if (repeated >= 0) return [{ code: 'repeated_point' as const, point, other: repeated }];
    const before = places[point - 1];
    const problems: ChartProblem[] = [];
    if (before && comesBefore(place, before))
      problems.push({ code: 'out_of_order', point, other: point - 1 });
    const exceeded = places.findIndex(
      (other) => isBeyond(place, other) && other.capacity.isLessThan(place.capacity),
    );
    if (exceeded >= 0) problems.push({ code: 'capacity_rises', point, other: exceeded });
    return problems;
  });
}

function isSame(one: Place, other: Place): boolean {
  return one.height.compare(other.height) === 0 && one.distance.compare(other.distance) === 0;
}

function comesBefore(one: Place, other: Place): boolean {
  const byHeight = one.height.compare(other.height);
  return byHeight < 0 || (byHeight === 0 && one.distance.isLessThan(other.distance));
}

/** Elsewhere, and nowhere lower or nearer. */
function isBeyond(one: Place, other: Place): boolean {
  return (
    !isSame(one, other) && !one.height.isLessThan(other.height) && !one.distance.isLessThan(other.distance)
  );
}

/** Distances from the axle: needed where the chart goes by load centres, and readable wherever they are given. */
function checkAxle(chart: LoadChart): ChartProblem[] {
  const { distanceBasis, axleToForkFaceMm, axleToCarriageMm } = chart;
  const given = { axleToForkFaceMm, axleToCarriageMm };
  const problems = (['axleToForkFaceMm', 'axleToCarriageMm'] as const).flatMap((figure): ChartProblem[] => {
    const text = given[figure];
    if (text === undefined)
      return distanceBasis === 'loadCentre' ? [{ code: 'axle_distance_missing', figure }] : [];
    const code = problemOf(figure, text);
    return code ? [{ code, figure }] : [];
  });
  if (problems.length > 0 || axleToForkFaceMm === undefined || axleToCarriageMm === undefined)
    return problems;
  const isSwapped = Exact.of(axleToForkFaceMm).isLessThan(Exact.of(axleToCarriageMm));
  return isSwapped ? [{ code: 'carriage_ahead_of_forks', figure: 'axleToCarriageMm' }] : [];
}

function checkCover({ attachmentCover }: LoadChart): ChartProblem[] {
  const isNameless = attachmentCover !== undefined && attachmentCover.reference.trim() === '';
  return isNameless ? [{ code: 'cover_without_reference' }] : [];
}
