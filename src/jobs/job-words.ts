import type { Actor } from '../people/actor.js';
import type { StateKind } from '../web/components/state-mark.js';
import type { JobState, JobSummaryView } from './jobs.dto.js';

const MARKS: Readonly<Record<JobState, StateKind>> = {
  planned: 'plain',
  reserved: 'ok',
  out: 'away',
  back: 'ok',
  cancelled: 'refused',
};

/** A job's state as a mark: 'reserved (3 of 8)'. */
export function jobMark({ state, booked, needed }: Pick<JobSummaryView, 'state' | 'booked' | 'needed'>): {
  state: StateKind;
  word: string;
} {
  const share = state === 'reserved' || state === 'out' ? ` (${booked} of ${needed})` : '';
  return { state: state === 'reserved' && booked < needed ? 'due' : MARKS[state], word: `${state}${share}` };
}

/** Whether this person makes and changes jobs and stands at the counter. */
export function keepsJobs({ roles }: Actor): boolean {
  return roles.includes('storeman') || roles.includes('manager');
}
