/**
 * One line of a panel schedule: panels of one size and mass. Figures are exact decimal text, `count` is whole.
 * The mass is either weighed (`massKg`) or estimated from an areal mass; `checkSchedule` refuses both and neither.
 */
export interface PanelLine {
  readonly name: string;
  readonly heightMm: string;
  readonly widthMm: string;
  readonly thicknessMm: string;
  readonly count: number;
  /** Mass of the packing that travels with one panel; '0' for none. */
  readonly packingKg: string;
  readonly massKg?: string;
  readonly arealMassKgPerM2?: string;
}
