import type { LoadChart } from '../rules/hosting/load-chart.js';

/** A chart as the register keeps it: what is said, in one order, so that the same chart reads the same twice. */
export function plainChart(chart: LoadChart): LoadChart {
  const { distanceBasis, points, axleToForkFaceMm, axleToCarriageMm, attachmentCover } = chart;
  return {
    distanceBasis,
    points: points.map(({ heightMm, distanceMm, capacityKg }) => ({ heightMm, distanceMm, capacityKg })),
    ...(axleToForkFaceMm === undefined ? {} : { axleToForkFaceMm }),
    ...(axleToCarriageMm === undefined ? {} : { axleToCarriageMm }),
    ...(attachmentCover && {
      attachmentCover: { by: attachmentCover.by, reference: attachmentCover.reference.trim() },
    }),
  };
}
