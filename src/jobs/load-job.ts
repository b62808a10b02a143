import type { EntityManager } from 'typeorm';
import { Problem } from '../problem.js';
import { toDay } from '../rules/calendar/day.js';
import type { Window } from '../rules/lines/need.js';
import { JobEntity } from './job.entity.js';

/** A job with what is asked of the store its truck loads at. */
export type Job = Omit<JobEntity, 'store'> & {
  readonly store: Pick<NonNullable<JobEntity['store']>, 'name' | 'timeZone'>;
};

/**
 * The job as it is now, read through the manager given: inside a change, that of the change.
 * @throws Problem `not_found`.
 */
export async function loadJob(manager: EntityManager, id: number): Promise<Job> {
  const job = await manager.findOne(JobEntity, { where: { id }, relations: { store: true } });
  if (!job?.store) throw new Problem('not_found', `There is no job with the number ${id}.`);
  return { ...job, store: job.store };
}

/** The days the job's gear is away, both included. */
export function windowOf({ loadOutDay, backDay }: Pick<JobEntity, 'loadOutDay' | 'backDay'>): Window {
  return { from: toDay(loadOutDay), to: toDay(backDay) };
}
