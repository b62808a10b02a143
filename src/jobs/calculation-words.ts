import type { CalculationProblem, CalculationProblemCode } from '../rules/calculations/calculation.js';
import type { CalculationKey } from '../rules/calculations/parameter.js';
import { needFigure, hasFigure } from '../web/sentences/words.js';

/** What each part of the calculation sheet is about, in the order of the work. */
export const CALCULATION_TITLES: Readonly<Record<CalculationKey, string>> = {
  lifting: 'The lifter',
  unloading: 'From truck to trolley: the spreader bar',
  strapping: 'Ratchet straps',
  supports: 'Two trolleys under a panel',
  hosting: 'The host machine',
  steadying: 'Safety lines',
  platform: 'The work platform',
  programme: 'Trolleys, trucks and days',
};

/** What keeps a part of the sheet from being worked out, and what to do about it. `labelOf` names a figure of the method. */
export function calculationSentence(
  problem: CalculationProblem,
  labelOf: (key: string) => string | undefined,
): string {
  const subject = problem.subject === undefined ? undefined : (labelOf(problem.subject) ?? problem.subject);
  return SENTENCES[problem.code]({ ...problem, ...(subject !== undefined && { subject }) });
}

const SENTENCES: Readonly<Record<CalculationProblemCode, (problem: CalculationProblem) => string>> = {
  parameter_missing: ({ subject }) =>
    `The ${subject} is not stated. State it on the job, with where it is from.`,
  parameter_out_of_range: ({ subject }) => `The ${subject} cannot be right. Look at the figure and its unit.`,
  leg_too_short: (problem) =>
    `A top leg is too short to reach the hook${compared(problem)}. Take longer legs, or bring the drops closer.`,
  leg_too_flat: (problem) =>
    `The top legs hang too flat${compared(problem)}. Take longer legs, or bring the drops closer.`,
  centre_outside_supports: (problem) =>
    `The centre of gravity of panel ${problem.subject} lies at or beyond a support${compared(problem)}, so the panel would tip. Set the supports farther apart.`,
  spacing_longer_than_panel: (problem) =>
    `The trolleys would stand farther apart than panel ${problem.subject} is tall${compared(problem)}. Set them closer, or carry this panel another way.`,
  supports_too_close: (problem) =>
    `The trolleys stand too close together${compared(problem)}. Set them farther apart.`,
  overhang_too_long: (problem) =>
    `Too much of panel ${problem.subject} overhangs a trolley${compared(problem)}. Set the trolleys farther apart.`,
  floor_point_overloaded: (problem) =>
    `A castor presses harder than the floor bears${compared(problem)}. Spread the load, or ask who answers for the floor.`,
  truck_time_unreadable: ({ subject }) =>
    `The truck time ${subject} cannot be read, or is out of order. Write a day and a time, earliest first.`,
  truck_outside_working_hours: ({ subject }) =>
    `A truck at ${subject} comes outside working hours. Order it within them.`,
  truck_not_needed: ({ subject }) =>
    `The truck at ${subject} is not needed: the panels are on the trucks before it.`,
  load_longer_than_day: (problem) =>
    `One piece of work takes longer than a working day${compared(problem)}. Look at the minutes.`,
  work_never_ends: (problem) =>
    `With so few panels on wheels at one time a truck can never be emptied${compared(problem)}. Allow for more.`,
};

function compared({ needed, has, unit }: CalculationProblem): string {
  const parts = [
    has === undefined ? '' : `is ${hasFigure(has, unit)}`,
    needed === undefined ? '' : `must be ${needFigure(needed, unit)}`,
  ].filter(Boolean);
  return parts.length > 0 ? ` (${parts.join(', ')})` : '';
}
