import type { Duty } from '../rules/gear/gear.js';

/** How much of everything a job has at work at one time. */
export interface JobCounts {
  readonly crews: number;
  readonly liftersInUse: number;
  readonly panelsOnWheels: number;
  readonly trucksUnloading: number;
  readonly personsAloft: number;
}

/** A figure of the method that a job states for itself, with where it comes from. */
export interface StatedParameter {
  readonly key: string;
  /** Exact decimal text in the parameter's unit. */
  readonly value: string;
  readonly reason: string;
}

/** One line of a panel schedule. Sizes and masses are exact decimal text; one of the two masses is given. */
export interface PanelRow {
  readonly name: string;
  readonly heightMm: string;
  readonly widthMm: string;
  readonly thicknessMm: string;
  readonly massKg?: string;
  readonly arealMassKgPerM2?: string;
  readonly fittingsKg?: string;
  readonly centreOffsetMm?: string;
  readonly packingKg: string;
  readonly count: number;
}

/** A person's change to a line that the method gave. */
export interface LineAdjustment {
  readonly lineKey: string;
  readonly reason: string;
  readonly quantity?: number;
  readonly rating?: { readonly value: string; readonly unit: string };
  readonly lengthM?: string;
}

/** A line that the method does not know. */
export interface AddedLine {
  /** Given by Tackleroom: `added1`, `added2` … */
  readonly lineKey: string;
  readonly label: string;
  readonly kind: string;
  readonly duty: Duty;
  readonly quantity: number;
  /** In a unit of the kind's own measure. */
  readonly rating?: { readonly value: string; readonly unit: string };
  readonly lengthM?: string;
  /** How a sling of the line is hitched; the rating is then the load on the hitch. */
  readonly hitch?: { readonly mode: string; readonly angleDeg?: string };
  readonly reason: string;
}

/** The storeman's word on one item: use it on this line, or leave it out. A pin never overrides a refusal. */
export interface GearChoice {
  readonly itemId: number;
  readonly choice: 'pin' | 'exclude';
  readonly lineKey?: string;
  readonly reason: string;
}
