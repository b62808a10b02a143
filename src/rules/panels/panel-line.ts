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
  /** Mass of the fittings of one panel, where they are not in its areal mass. A weighed mass has them in it. */
  readonly fittingsKg?: string;
  /** How far the centre of gravity lies from the middle of the height, either way; the middle where not stated. */
  readonly centreOffsetMm?: string;
}
