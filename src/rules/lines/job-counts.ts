import type { CountedBy, MethodDefinition } from './method.js';
import type { LineProblem } from './line-problem.js';

/** What a job's planner counts. Lifters in use and persons aloft start from the method's figures for each crew. */
export interface JobCounts {
  readonly crews: number;
  readonly lifters?: number;
  readonly personsAloft?: number;
  /** Panels that stand on trolleys at one time. */
  readonly panelsOnWheels: number;
  /** Trucks that are unloaded at one time. */
  readonly trucksUnloading: number;
}

/** Every count that a method's lines can be multiplied by. */
export type Counted = Readonly<Record<CountedBy, number>>;

const MOST = 1000;

/** The counts of a job with the method's figures where the planner gave none. */
export function countedFor(counts: JobCounts, { perCrew }: MethodDefinition): Counted {
  return {
    job: 1,
    crew: counts.crews,
    lifterInUse: counts.lifters ?? counts.crews * perCrew.lifters,
    personAloft: counts.personsAloft ?? counts.crews * perCrew.personsAloft,
    panelOnWheels: counts.panelsOnWheels,
    truckUnloading: counts.trucksUnloading,
  };
}

/** Every count that is not whole or out of range. A job has at least one crew; the other counts may be nought. */
export function checkCounts(counts: JobCounts): readonly LineProblem[] {
  return Object.entries(counts)
    .filter(([name, value]) => value !== undefined && !isCount(value, name === 'crews' ? 1 : 0))
    .map(([name]) => ({ code: 'count_out_of_range', subject: name }));
}

function isCount(value: unknown, least: number): boolean {
  return typeof value === 'number' && Number.isInteger(value) && value >= least && value <= MOST;
}
