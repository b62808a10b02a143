import type { Actor } from '../people/actor.js';
import type { JobView } from './jobs.dto.js';
import { keepsJobs } from './job-words.js';

const PLACES = [
  { key: 'sheet', path: '', label: 'Sheet', forAll: true },
  { key: 'plan', path: '/plan', label: 'Plan gear', forAll: true },
  { key: 'calculation', path: '/calculation', label: 'Calculation', forAll: true },
  { key: 'use', path: '/use', label: 'Lifts and events', forAll: true },
  { key: 'gear-file', path: '/gear-file', label: 'Gear file', forAll: true },
  { key: 'checks', path: '/checks', label: 'Checks', forAll: true },
  { key: 'hand-out', path: '/hand-out', label: 'Hand out', forAll: false },
  { key: 'bring-back', path: '/bring-back', label: 'Bring back', forAll: false },
  { key: 'edit', path: '/edit', label: 'Edit', forAll: false },
] as const;

/** The way back to the list, or to the job's sheet. */
export function JobCrumbs({ job }: { job?: Pick<JobView, 'id' | 'reference'> }) {
  return (
    <nav class="crumbs" aria-label="Where you are">
      <a href="/jobs">Jobs</a>
      {job ? (
        <>
          {' '}
          › <a href={`/jobs/${job.id}`}>{job.reference}</a>
        </>
      ) : null}
    </nav>
  );
}

/** The pages of one job. */
export function JobLinks({
  job,
  me,
  here,
}: {
  job: Pick<JobView, 'id' | 'cancelled'>;
  me: Actor;
  here: (typeof PLACES)[number]['key'];
}) {
  const places = PLACES.filter(
    ({ key, forAll }) => key !== here && (forAll || (keepsJobs(me) && !job.cancelled)),
  );
  return (
    <p class="actions">
      {places.map(({ key, path, label }) => (
        <a key={key} class={key === 'plan' ? 'button' : 'button quiet'} href={`/jobs/${job.id}${path}`}>
          {label}
        </a>
      ))}
    </p>
  );
}
