import type { FieldError } from '../problem.js';
import type { LineProblem, LineProblemCode } from '../rules/lines/line-problem.js';
import type { ScheduleProblem, ScheduleProblemCode } from '../rules/panels/check-schedule.js';
import type { JobEntity } from './job.entity.js';

type Changed = Pick<JobEntity, 'adjustments' | 'addedLines' | 'parameters'>;

/** A problem of the panel schedule or the gear lines, at the field of the request that it is about. */
export function linesProblemAsFieldError(problem: ScheduleProblem | LineProblem, job: Changed): FieldError {
  return 'subject' in problem ? lineProblem(problem, job) : scheduleProblem(problem);
}

function scheduleProblem(problem: ScheduleProblem): FieldError {
  const row = problem.line === undefined ? 'panels' : `panels[${problem.line}]`;
  return {
    field: problem.field === undefined ? row : `${row}.${problem.field}`,
    message: SCHEDULE_WORDS[problem.code](problem),
  };
}

const SCHEDULE_WORDS: Readonly<Record<ScheduleProblemCode, (problem: ScheduleProblem) => string>> = {
  no_panels: () => 'list at least one panel; a job of none needs no gear',
  blank_name: () => 'name the panel as the drawings do',
  not_a_number: () => 'write a plain decimal number such as 7450 or 52.5',
  too_small: between,
  too_large: between,
  mass_missing: () => 'give the weighed mass, or the mass per square metre to estimate it from',
  mass_given_twice: () => 'give either the weighed mass or the mass per square metre, not both',
  fittings_in_weighed_mass: () =>
    'the weighed mass has the fittings in it; leave them out, or give the mass per square metre instead',
  centre_outside_panel: () =>
    'the centre of gravity must lie inside the panel; write how far it is from the middle of the height, less than half the height',
  count_out_of_range: between,
};

function between({ least, most }: ScheduleProblem): string {
  return `should be from ${least} to ${most}; look at the unit`;
}

function lineProblem(problem: LineProblem, { adjustments, addedLines, parameters }: Changed): FieldError {
  const message = LINE_WORDS[problem.code](problem);
  if (problem.code === 'count_out_of_range') {
    return { field: `counts.${problem.subject === 'lifters' ? 'liftersInUse' : problem.subject}`, message };
  }
  const stated = parameters.findIndex(({ key }) => key === problem.subject);
  if (stated >= 0) return { field: `parameters[${stated}]`, message: `${problem.subject}: ${message}` };
  const adjusted = adjustments.findIndex(({ lineKey }) => lineKey === problem.subject);
  if (adjusted >= 0) return { field: `adjustments[${adjusted}]`, message: `${problem.subject}: ${message}` };
  const added = addedLines.findIndex(({ lineKey }) => lineKey === problem.subject);
  return {
    field: added >= 0 ? `addedLines[${added}]` : 'adjustments',
    message: `${problem.subject}: ${message}`,
  };
}

const LINE_WORDS: Readonly<Record<LineProblemCode, (problem: LineProblem) => string>> = {
  count_out_of_range: ({ subject }) => `write a whole number from ${subject === 'crews' ? 1 : 0} to 1000`,
  unknown_line: () => 'the method has no such line',
  line_adjusted_twice: () => 'is changed twice; say it once',
  key_taken: () => 'is the key of another line',
  reason_missing: () => 'say why, so that others understand the change',
  quantity_out_of_range: () => 'write a quantity from 0 to 10000',
  unknown_kind: () => 'choose a kind of gear that the catalogue knows',
  duty_not_of_kind: () => 'this kind of gear does not do that duty',
  rating_missing: () => 'say how much each must be rated for',
  rating_not_of_kind: () => 'this kind of gear carries no rating',
  rating_unreadable: () => 'write the rating as a number above 0 in a unit of what the kind is rated in',
  rating_below_method: ({ least, unit }) =>
    `the method needs at least ${least} ${unit}; a lighter need comes from the panel schedule`,
  hitch_not_of_kind: () => 'only a sling is hitched; leave the hitch out',
  hitch_unknown: () => 'choose a hitch that the kind knows',
  hitch_angle_missing: () => 'write the angle of the leg to the vertical, in degrees',
  hitch_angle_out_of_range: () =>
    'the angle of the leg to the vertical must be from 0 to 60 degrees; hang it steeper, or have the lift planned',
  hitch_angle_not_of_mode: () =>
    'this hitch takes no angle; leave the angle out, or choose a hitch with inclined legs',
  hitch_too_few_slings: ({ least }) =>
    `one such hitch takes ${least} single slings; write at least that quantity`,
  unknown_dimension: ({ dimension }) => `${dimension} is no measure of this kind`,
  dimension_unreadable: ({ dimension }) => `write ${dimension} as a number above 0`,
  unknown_parameter: () => 'the method has no such figure; clear it',
  parameter_stated_twice: () => 'is stated twice; say it once',
  parameter_unreadable: () => 'write a plain decimal number such as 4.5',
  parameter_not_whole: () => 'write a whole number',
  parameter_out_of_range: ({ least, most, unit }) =>
    `should be from ${least} to ${most}${unit ? ` ${unit}` : ''}; look at the unit`,
  dimension_below_method: ({ dimension, least }) => `the method needs ${dimension} of at least ${least}`,
};
