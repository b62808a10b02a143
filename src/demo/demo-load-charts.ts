import type { ChartPoint, LoadChart } from '../rules/hosting/load-chart.js';

/** An own fork truck of 2.5 t whose plate lists the lifter. */
export const FORK_TRUCK: LoadChart = {
  distanceBasis: 'loadCentre',
  points: points({
    '3300': { '500': '2500', '600': '2290', '700': '2110' },
    '4800': { '500': '2250', '600': '2060', '700': '1900' },
    '6000': { '500': '1700', '600': '1560', '700': '1435' },
  }),
  axleToForkFaceMm: '480',
  axleToCarriageMm: '440',
  attachmentCover: { by: 'plate', reference: 'second plate, panel lifter of 180 kg' },
};

/** A compact fork truck of 1.5 t: high up it carries a light panel and no tall one. */
export const COMPACT_FORK_TRUCK: LoadChart = {
  distanceBasis: 'loadCentre',
  points: points({
    '3300': { '500': '1500', '600': '1330' },
    '4000': { '500': '1050', '600': '930' },
    '5000': { '500': '700', '600': '620' },
  }),
  axleToForkFaceMm: '420',
  axleToCarriageMm: '385',
  attachmentCover: { by: 'plate', reference: 'second plate, panel lifter of 180 kg' },
};

/** A fork truck of 3 t as the hire firm handed over its chart. */
export const HIRED_FORK_TRUCK: LoadChart = {
  distanceBasis: 'loadCentre',
  points: points({
    '3300': { '500': '3000', '600': '2750', '700': '2540' },
    '4700': { '500': '2700', '600': '2470', '700': '2280' },
    '6500': { '500': '1650', '600': '1510', '700': '1390' },
  }),
  axleToForkFaceMm: '515',
  axleToCarriageMm: '470',
  attachmentCover: { by: 'plate', reference: 'attachment plate A2, panel lifter' },
};

/** A telescopic handler of 4 t; that its maker allows the lifter on it is for a letter to say. */
export const HANDLER: LoadChart = {
  distanceBasis: 'reach',
  points: points({
    '3000': { '1000': '4000', '2000': '3200', '3000': '2100', '4000': '1400' },
    '6000': { '1000': '3600', '2000': '2800', '3000': '1900', '4000': '1250' },
    '8000': { '1000': '3000', '2000': '2500', '3000': '1700' },
  }),
};

/** A chart with the maker's letter that covers the lifter. */
export function withLetter(chart: LoadChart, reference: string): LoadChart {
  return { ...chart, attachmentCover: { by: 'makersLetter', reference } };
}

/** Points from capacities by height and distance, in their order. */
function points(chart: Readonly<Record<string, Readonly<Record<string, string>>>>): ChartPoint[] {
  return Object.entries(chart).flatMap(([heightMm, row]) =>
    Object.entries(row).map(([distanceMm, capacityKg]) => ({ heightMm, distanceMm, capacityKg })),
  );
}
