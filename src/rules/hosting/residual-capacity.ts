import { Exact } from '../quantities/exact.js';
import type { Working } from '../working.js';
import { chartCapacity, pointsAtOrBeyond, type ExactPoint, type OutsideChart } from './chart-capacity.js';
import type { HostingNeed } from './hosting-need.js';
import type { LoadChart } from './load-chart.js';
import { loadInBalance, type AxleMoments } from './moment-balance.js';

/** What a machine still carries with the lifter on it, or why its chart does not say. */
export type Residual =
  | { readonly ok: true; readonly netKg: Exact; readonly workings: readonly Working[] }
  | { readonly ok: false; readonly outside: OutsideChart };

/**
 * What the machine still carries below the lifter, by its own chart: nought when the lifter alone is all it carries.
 * The chart has passed `checkChart`.
 * @throws RangeError when a figure is no decimal text, or a chart by load centres has no distances from the axle.
 */
export function residualCapacity(chart: LoadChart, need: HostingNeed): Residual {
  return chart.distanceBasis === 'reach' ? byReach(chart, need) : byLoadCentre(chart, need);
}

/** Telescopic handlers: the lifter counts as load, wherever it hangs. */
function byReach(chart: LoadChart, need: HostingNeed): Residual {
  if (need.reachMm === undefined) return { ok: false, outside: { subject: 'reachMm' } };
  const found = chartCapacity(chart, {
    heightMm: Exact.of(need.heightMm),
    distanceMm: Exact.of(need.reachMm),
  });
  if (!found.ok) return found;
  const lifterKg = Exact.of(need.attachmentMassKg);
  const netKg = notBelowNought(found.capacityKg.minus(lifterKg));
  const working: Working = {
    title: 'What the machine still carries below the lifter',
    formula: 'net = capacity − lifter',
    inputs: [
      { name: 'capacity', value: found.capacityKg.toString(), unit: 'kg' },
      { name: 'lifter', value: lifterKg.toString(), unit: 'kg' },
    ],
    result: { name: 'net', value: netKg.toString(), unit: 'kg' },
    source: 'doe-std-1090',
    caution: "The maker's chart for this machine with this attachment governs.",
  };
  return { ok: true, netKg, workings: [...found.workings, working] };
}

/** One point of the chart with what it leaves for the load. */
interface Candidate {
  readonly point: ExactPoint;
  readonly moments: AxleMoments;
  readonly balanceKg: Exact;
  readonly netKg: Exact;
}

/**
 * Fork trucks: the moment about the front axle that the chart allows, less that of the lifter. Only points whose load
 * centre is as far out as the panel's, or farther, are used, so that no figure is worked out for a load beyond the
 * chart; and lifter and load together never weigh more than the point allows, whatever their moments.
 */
function byLoadCentre(chart: LoadChart, need: HostingNeed): Residual {
  const { axleToForkFaceMm, axleToCarriageMm } = chart;
  if (axleToForkFaceMm === undefined || axleToCarriageMm === undefined) {
    throw new RangeError('the chart has no distances from the front axle');
  }
  const lifter = {
    axleToForkFaceMm: Exact.of(axleToForkFaceMm),
    axleToCarriageMm: Exact.of(axleToCarriageMm),
    attachmentMassKg: Exact.of(need.attachmentMassKg),
    attachmentCentreMm: Exact.of(need.attachmentCentreMm),
    attachmentDepthMm: Exact.of(need.attachmentDepthMm),
    loadDepthMm: Exact.of(need.loadDepthMm),
  };
  const distance = loadDistance(lifter);
  const found = pointsAtOrBeyond(chart, {
    heightMm: Exact.of(need.heightMm),
    distanceMm: distance.distanceMm,
  });
  if (!found.ok) return found;
  const [first, ...others] = found.points.map((point) => candidate(point, lifter));
  if (!first) throw new RangeError('no point was found');
  const best = others.reduce((most, other) => (most.netKg.isLessThan(other.netKg) ? other : most), first);
  return { ok: true, netKg: best.netKg, workings: [distance.working, ...candidateWorkings(best)] };
}

type Lifter = Omit<AxleMoments, 'capacityKg' | 'loadCentreMm'>;

/** How far the panel's centre of gravity is from the fork face, as chart distances are measured. */
function loadDistance(lifter: Lifter): { readonly distanceMm: Exact; readonly working: Working } {
  const { axleToForkFaceMm, axleToCarriageMm, attachmentDepthMm, loadDepthMm } = lifter;
  const distanceMm = axleToCarriageMm.plus(attachmentDepthMm).plus(loadDepthMm).minus(axleToForkFaceMm);
  const working: Working = {
    title: "The panel's load centre, from the fork face",
    formula: 'load centre = axle to carriage + depth of lifter + half panel − axle to fork face',
    inputs: [
      millimetres('axle to carriage', axleToCarriageMm),
      millimetres('depth of lifter', attachmentDepthMm),
      millimetres('half panel', loadDepthMm),
      millimetres('axle to fork face', axleToForkFaceMm),
    ],
    result: millimetres('load centre', distanceMm),
    source: 'common-practice',
  };
  return { distanceMm, working };
}

function candidate(point: ExactPoint, lifter: Lifter): Candidate {
  const moments = { ...lifter, capacityKg: point.capacityKg, loadCentreMm: point.distanceMm };
  const balanceKg = loadInBalance(moments);
  const limitKg = notBelowNought(point.capacityKg.minus(lifter.attachmentMassKg));
  return { point, moments, balanceKg, netKg: balanceKg.isLessThan(limitKg) ? balanceKg : limitKg };
}

function candidateWorkings({ point, moments, balanceKg, netKg }: Candidate): Working[] {
  const capacity = { name: 'capacity', value: point.capacityKg.toString(), unit: 'kg' };
  const lifter = { name: 'lifter', value: moments.attachmentMassKg.toString(), unit: 'kg' };
  const balance = { name: 'by moments', value: balanceKg.toString(), unit: 'kg' };
  return [
    {
      title: `Moments about the front axle, by the chart's point at ${point.heightMm.toString()} mm height`,
      formula:
        'by moments = (capacity × (axle to fork face + chart load centre) − lifter × (axle to carriage + centre of lifter)) ÷ (axle to carriage + depth of lifter + half panel)',
      inputs: [
        capacity,
        millimetres('axle to fork face', moments.axleToForkFaceMm),
        millimetres('chart load centre', moments.loadCentreMm),
        lifter,
        millimetres('axle to carriage', moments.axleToCarriageMm),
        millimetres('centre of lifter', moments.attachmentCentreMm),
        millimetres('depth of lifter', moments.attachmentDepthMm),
        millimetres('half panel', moments.loadDepthMm),
      ],
      result: balance,
      source: 'cfr-1910-178',
      caution:
        "The truck maker's plate for this attachment governs. A hung load swings: keep it low and slow.",
    },
    {
      title: 'What the truck still carries below the lifter',
      formula: 'net = the lesser of by moments and capacity − lifter',
      inputs: [balance, capacity, lifter],
      result: { name: 'net', value: netKg.toString(), unit: 'kg' },
      source: 'doe-std-1090',
    },
  ];
}

function millimetres(name: string, value: Exact): { name: string; value: string; unit: string } {
  return { name, value: value.toString(), unit: 'mm' };
}

function notBelowNought(mass: Exact): Exact {
  return mass.isNegative() ? Exact.of('0') : mass;
}
