import type { Catalogue } from '../catalogue/catalogue.js';
import { badInput } from '../http/input.js';
import type { FieldError } from '../problem.js';
import { addMonths, toDay, type Day } from '../rules/calendar/day.js';
import type { JobEntity } from './job.entity.js';
import { jobLines } from './job-lines.js';
import { linesProblemAsFieldError } from './line-problem-words.js';

type CheckedJob = Pick<
  JobEntity,
  | 'loadOutDay'
  | 'backDay'
  | 'scheme'
  | 'method'
  | 'storeId'
  | 'panels'
  | 'counts'
  | 'parameters'
  | 'adjustments'
  | 'addedLines'
>;

/**
 * Refuses a job that cannot be right, with every reason.
 * @throws Problem `bad_input`.
 */
export function refuseImpossibleJob(
  job: CheckedJob,
  known: { catalogue: Catalogue; storeIds: readonly number[] },
): void {
  const errors = [...windowErrors(job), ...referenceErrors(job, known)];
  if (!errors.some(({ field }) => field === 'method')) {
    const lines = jobLines(job, known.catalogue);
    if (!lines.ok) errors.push(...lines.problems.map((problem) => linesProblemAsFieldError(problem, job)));
  }
  if (errors.length > 0) throw badInput(errors);
}

/** What a planner should look at twice, though it is not refused. */
export function jobWarnings({ loadOutDay }: Pick<JobEntity, 'loadOutDay'>, today: Day): string[] {
  return loadOutDay < today ? [`The load-out day ${loadOutDay} has passed; today is ${today}.`] : [];
}

function windowErrors({ loadOutDay, backDay }: CheckedJob): FieldError[] {
  if (backDay < loadOutDay) {
    return [{ field: 'backDay', message: `should not come before the load-out day ${loadOutDay}` }];
  }
  if (toDay(backDay) > addMonths(toDay(loadOutDay), 12)) {
    return [{ field: 'backDay', message: 'is more than a year after the load-out day; split the job' }];
  }
  return [];
}

function referenceErrors(
  { scheme, method, storeId }: CheckedJob,
  { catalogue, storeIds }: { catalogue: Catalogue; storeIds: readonly number[] },
): FieldError[] {
  const schemes = catalogue.schemes().map((known) => known.scheme);
  const methods = catalogue.methods().map((known) => known.method);
  const errors: FieldError[] = [];
  if (!schemes.includes(scheme))
    errors.push({ field: 'scheme', message: `choose from ${schemes.join(', ')}` });
  if (!methods.includes(method))
    errors.push({ field: 'method', message: `choose from ${methods.join(', ')}` });
  if (!storeIds.includes(storeId)) errors.push({ field: 'storeId', message: 'choose a store that is there' });
  return errors;
}
