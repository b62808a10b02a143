/** What a rating measures. Masses and forces never compare without an explicit conversion by gravity, shown in a working. */
export const MEASURES = ['workingLoadLimit', 'lashingCapacity', 'ratedCapacity', 'ratedPersons'] as const;
export type Measure = (typeof MEASURES)[number];

/** A rating as stamped on the item: `value` is the decimal text of the mark, `unit` a symbol of `units.ts`. */
export interface Marking {
  readonly measure: Measure;
  readonly value: string;
  readonly unit: string;
  /** The condition the mark holds under, as stamped ('straight pull', 'per side'); absent when none is stamped. */
  readonly condition?: string;
}
