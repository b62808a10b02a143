import type { Calculated, LiftedPanel } from '../calculations/calculation.js';
import { lifter } from '../lifting/lifter.js';
import { Exact } from '../quantities/exact.js';
import type { Working } from '../working.js';
import type { HostingNeed } from './hosting-need.js';

/** What hangs on a host machine, and where. */
export interface HostLoadInput {
  readonly panels: readonly LiftedPanel[];
  readonly handlingFactor: Exact;
  readonly lifterMassKg: Exact;
  readonly riggingMassKg: Exact;
  /** From the carriage face to the lifter's own centre of gravity. */
  readonly lifterCentreMm: Exact;
  /** From the carriage face to the back of the panel. */
  readonly lifterDepthM: Exact;
  /** Of the bar above the floor, with the panel at its highest. */
  readonly liftHeightM: Exact;
  /** From the front of a telescopic handler to the panel. */
  readonly machineReachM?: Exact;
}

const MM_PER_M = Exact.of('1000');
const HALF = Exact.of('0.5');

/**
 * All that the host machine holds up, in kg, and what its chart must be asked: the load without the lifter, the
 * lifter as an attachment, the height and the distance. Whether a machine carries it is for its own chart to say.
 * The hoist capacity must cover load, device and rigging (DOE-STD-1090).
 */
export function hostLoad(input: HostLoadInput): Calculated<{ hostLoadKg: Exact; hosting: HostingNeed }> {
  const lift = lifter(input);
  if (!lift.ok) return lift;
  const { lifterLoadKg, thickestMm } = lift.figures;
  const { lifterMassKg, riggingMassKg, machineReachM } = input;
  const loadKg = lifterLoadKg.plus(riggingMassKg);
  const hostLoadKg = loadKg.plus(lifterMassKg);
  const loadDepthMm = thickestMm.times(HALF);
  return {
    ok: true,
    figures: {
      hostLoadKg,
      hosting: {
        loadKg: loadKg.toString(),
        attachmentMassKg: lifterMassKg.toString(),
        attachmentCentreMm: input.lifterCentreMm.toString(),
        attachmentDepthMm: inMm(input.lifterDepthM),
        loadDepthMm: loadDepthMm.toString(),
        heightMm: inMm(input.liftHeightM),
        ...(machineReachM && { reachMm: inMm(machineReachM) }),
      },
    },
    workings: [
      loadWorking({ lifterLoadKg, lifterMassKg, riggingMassKg, hostLoadKg }),
      depthWorking(thickestMm, loadDepthMm),
    ],
  };
}

function loadWorking(masses: {
  readonly lifterLoadKg: Exact;
  readonly lifterMassKg: Exact;
  readonly riggingMassKg: Exact;
  readonly hostLoadKg: Exact;
}): Working {
  const kg = (name: string, value: Exact) => ({ name, value: value.toString(), unit: 'kg' });
  return {
    title: 'Host machine: all that it holds up',
    formula: 'heaviest lift + lifter + rigging',
    inputs: [
      kg('heaviest lift', masses.lifterLoadKg),
      kg('lifter', masses.lifterMassKg),
      kg('rigging', masses.riggingMassKg),
    ],
    result: kg('load on the host machine', masses.hostLoadKg),
    source: 'doe-std-1090',
    caution:
      'What a machine carries at this height and distance is for its own chart and plate to say, with the lifter listed as its attachment. Its maker and a competent person govern.',
  };
}

function depthWorking(thickestMm: Exact, loadDepthMm: Exact): Working {
  return {
    title: 'Host machine: centre of the panel from its back',
    formula: 'thickest panel ÷ 2',
    inputs: [{ name: 'thickest panel', value: thickestMm.toString(), unit: 'mm' }],
    result: { name: 'depth of the load', value: loadDepthMm.toString(), unit: 'mm' },
    source: 'common-practice',
  };
}

function inMm(lengthM: Exact): string {
  return lengthM.times(MM_PER_M).toString();
}
