/**
 * What hangs on a host machine, and how far up and out. Masses and lengths are exact decimal text. Lengths of the lifter
 * are measured from the face of the carriage that it sits on.
 */
export interface HostingNeed {
  /** The heaviest lift with its handling and the rigging; the lifter itself is `attachmentMassKg`. */
  readonly loadKg: string;
  readonly attachmentMassKg: string;
  /** From the carriage face to the lifter's own centre of gravity. */
  readonly attachmentCentreMm: string;
  /** From the carriage face to the back of the panel: how far the lifter pushes the load out. */
  readonly attachmentDepthMm: string;
  /** From the back of the panel to its centre of gravity: half the thickest panel. */
  readonly loadDepthMm: string;
  /** How high the load is lifted. */
  readonly heightMm: string;
  /** How far in front of the machine the load hangs; needed by machines whose chart goes by reach. */
  readonly reachMm?: string;
}
