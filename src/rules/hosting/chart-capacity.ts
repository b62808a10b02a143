import { Exact } from '../quantities/exact.js';
import type { Working } from '../working.js';
import type { ChartPoint, LoadChart } from './load-chart.js';

/** A point of a chart as exact figures. */
export interface ExactPoint {
  readonly heightMm: Exact;
  readonly distanceMm: Exact;
  readonly capacityKg: Exact;
}

/** Where the load is, up and out. */
export interface LoadPlace {
  readonly heightMm: Exact;
  readonly distanceMm: Exact;
}

/** Why a chart says nothing of a place: what is needed, and the most that the chart goes to. */
export interface OutsideChart {
  readonly subject: 'heightMm' | 'loadCentreMm' | 'reachMm';
  /** Absent where nobody said how far out the load hangs. */
  readonly needed?: Exact;
  readonly has?: Exact;
}

export type PointsFound =
  | { readonly ok: true; readonly points: readonly ExactPoint[] }
  | { readonly ok: false; readonly outside: OutsideChart };

/** What a chart allows at a place, or why it says nothing of it. */
export type ChartCapacity =
  | { readonly ok: true; readonly capacityKg: Exact; readonly workings: readonly Working[] }
  | { readonly ok: false; readonly outside: OutsideChart };

const MEASURED_BY = { loadCentre: 'loadCentreMm', reach: 'reachMm' } as const;

/**
 * The points that hold for a place: those as high and as far out, or beyond. A machine carries there no less than at
 * such a point, and a chart says nothing beyond its last one. The chart has passed `checkChart`.
 */
export function pointsAtOrBeyond({ points, distanceBasis }: LoadChart, place: LoadPlace): PointsFound {
  const all = points.map(asExact);
  const highEnough = all.filter(({ heightMm }) => !heightMm.isLessThan(place.heightMm));
  if (highEnough.length === 0) {
    return outside('heightMm', { needed: place.heightMm, known: all.map(({ heightMm }) => heightMm) });
  }
  const farEnough = highEnough.filter(({ distanceMm }) => !distanceMm.isLessThan(place.distanceMm));
  if (farEnough.length > 0) return { ok: true, points: farEnough };
  const known = highEnough.map(({ distanceMm }) => distanceMm);
  return outside(MEASURED_BY[distanceBasis], { needed: place.distanceMm, known });
}

/**
 * What the chart allows at a place: the greatest capacity of the points at or beyond it, never worked out between two
 * points or past the last. The chart has passed `checkChart`.
 */
export function chartCapacity(chart: LoadChart, place: LoadPlace): ChartCapacity {
  const found = pointsAtOrBeyond(chart, place);
  if (!found.ok) return found;
  const ruling = found.points.reduce((most, point) =>
    most.capacityKg.isLessThan(point.capacityKg) ? point : most,
  );
  const distance = chart.distanceBasis === 'reach' ? 'reach' : 'load centre';
  const working: Working = {
    title: 'What the load chart allows there',
    formula: `capacity = the greatest of the points at this height and ${distance} or beyond`,
    inputs: [
      { name: 'height needed', value: place.heightMm.toString(), unit: 'mm' },
      { name: `${distance} needed`, value: place.distanceMm.toString(), unit: 'mm' },
      { name: 'height of the point', value: ruling.heightMm.toString(), unit: 'mm' },
      { name: `${distance} of the point`, value: ruling.distanceMm.toString(), unit: 'mm' },
    ],
    result: { name: 'capacity', value: ruling.capacityKg.toString(), unit: 'kg' },
    source: 'common-practice',
    caution: 'A chart is not read between its points or past the last one.',
  };
  return { ok: true, capacityKg: ruling.capacityKg, workings: [working] };
}

function asExact({ heightMm, distanceMm, capacityKg }: ChartPoint): ExactPoint {
  return {
    heightMm: Exact.of(heightMm),
    distanceMm: Exact.of(distanceMm),
    capacityKg: Exact.of(capacityKg),
  };
}

function outside(
  subject: OutsideChart['subject'],
  { needed, known }: { needed: Exact; known: readonly Exact[] },
): { readonly ok: false; readonly outside: OutsideChart } {
  const has = known.reduce<Exact | undefined>(
    (most, one) => (most && !most.isLessThan(one) ? most : one),
    undefined,
  );
  return { ok: false, outside: { subject, needed, ...(has && { has }) } };
}
