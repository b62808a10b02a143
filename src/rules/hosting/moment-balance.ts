import { Exact } from '../quantities/exact.js';

/** What turns about the front axle of a fork truck. Masses in kg, distances in mm. */
export interface AxleMoments {
  /** The stated capacity and the load centre it is stated for. */
  readonly capacityKg: Exact;
  readonly loadCentreMm: Exact;
  readonly axleToForkFaceMm: Exact;
  readonly axleToCarriageMm: Exact;
  readonly attachmentMassKg: Exact;
  /** From the carriage face: to the attachment's centre of gravity, and to the back of the load. */
  readonly attachmentCentreMm: Exact;
  readonly attachmentDepthMm: Exact;
  /** From the back of the load to its centre of gravity. */
  readonly loadDepthMm: Exact;
}

/**
 * The load that turns the truck about its front axle, together with the attachment, exactly as much as the stated
 * capacity does: plain statics, whose principle is that of 29 CFR 1910.178 Appendix A. Rounded down to six places;
 * nought where the attachment alone turns it as much or more. It knows nothing of the strength of mast and forks.
 * @throws RangeError when the load's centre of gravity lies on the axle.
 */
export function loadInBalance(moments: AxleMoments): Exact {
  const { capacityKg, loadCentreMm, axleToForkFaceMm, axleToCarriageMm } = moments;
  const { attachmentMassKg, attachmentCentreMm, attachmentDepthMm, loadDepthMm } = moments;
  const stated = capacityKg.times(axleToForkFaceMm.plus(loadCentreMm));
  const attachment = attachmentMassKg.times(axleToCarriageMm.plus(attachmentCentreMm));
  const left = stated.minus(attachment);
  const arm = axleToCarriageMm.plus(attachmentDepthMm).plus(loadDepthMm);
  const load = left.dividedBy(arm, { places: 6, rounding: 'down' });
  return load.isNegative() ? Exact.of('0') : load;
}
