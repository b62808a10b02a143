import type { HostingNeed } from '../../src/rules/hosting/hosting-need.js';
import type { ChartPoint, LoadChart } from '../../src/rules/hosting/load-chart.js';

/** A point by its height, distance and capacity. */
export function point(heightMm: string, distanceMm: string, capacityKg: string): ChartPoint {
  return { heightMm, distanceMm, capacityKg };
}

/** A fork truck of 2,500 kg, covered by its plate. */
export function truck(changes: Partial<LoadChart> = {}): LoadChart {
  return {
    distanceBasis: 'loadCentre',
    points: [
      point('3000', '500', '2500'),
      point('3000', '800', '1900'),
      point('4500', '500', '2000'),
      point('4500', '800', '1500'),
    ],
    axleToForkFaceMm: '450',
    axleToCarriageMm: '400',
    attachmentCover: { by: 'plate', reference: 'Plate 7' },
    ...changes,
  };
}

/** A telescopic handler, covered by a letter. */
export function handler(changes: Partial<LoadChart> = {}): LoadChart {
  return {
    distanceBasis: 'reach',
    points: [point('6000', '2000', '3000'), point('6000', '4000', '1500'), point('9000', '2000', '2500')],
    attachmentCover: { by: 'makersLetter', reference: 'Letter 12' },
    ...changes,
  };
}

/** A lifter of 350 kg whose panel has its centre 500 mm before the fork face of the example truck, at 3 m. */
export function hosting(changes: Partial<HostingNeed> = {}): HostingNeed {
  return {
    loadKg: '600',
    attachmentMassKg: '350',
    attachmentCentreMm: '250',
    attachmentDepthMm: '490',
    loadDepthMm: '60',
    heightMm: '3000',
    reachMm: '2000',
    ...changes,
  };
}
