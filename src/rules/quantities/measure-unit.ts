import type { Measure } from './marking.js';
import type { Dimension } from './units.js';

/** What the units of each measure are of. A lashing capacity is a force: kilograms are no unit of it. */
export const DIMENSION_OF_MEASURE = {
  workingLoadLimit: 'mass',
  ratedCapacity: 'mass',
  lashingCapacity: 'force',
  ratedPersons: 'persons',
} as const satisfies Readonly<Record<Measure, Dimension>>;

const NEED_UNITS = { mass: 'kg', force: 'N', persons: 'persons' } as const;

/** The unit that a need of the measure is stated in: kg for masses, N for forces, persons. */
export function needUnitOf(measure: Measure): 'kg' | 'N' | 'persons' {
  return NEED_UNITS[DIMENSION_OF_MEASURE[measure]];
}
