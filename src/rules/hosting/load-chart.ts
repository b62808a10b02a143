/**
 * What a host machine carries, as its maker's chart states it. Figures are exact decimal text. Distances are load
 * centres from the fork face (`loadCentre`, fork trucks) or reaches from the machine's front (`reach`, telescopic
 * handlers), as `distanceBasis` says.
 */
export interface LoadChart {
  readonly distanceBasis: 'loadCentre' | 'reach';
  readonly points: readonly ChartPoint[];
  /** From the front axle to the fork face; needed to take an attachment's moment off a fork truck's chart. */
  readonly axleToForkFaceMm?: string;
  /** From the front axle to the face of the carriage that an attachment sits on. */
  readonly axleToCarriageMm?: string;
  /** What covers the lifter as an attachment of this machine: the plate that lists it, or the maker's letter. */
  readonly attachmentCover?: { readonly by: 'plate' | 'makersLetter'; readonly reference: string };
}

/** One stated capacity: what may be carried at this height with the load at this distance. */
export interface ChartPoint {
  readonly heightMm: string;
  readonly distanceMm: string;
  readonly capacityKg: string;
}
