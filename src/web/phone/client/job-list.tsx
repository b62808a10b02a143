import { useEffect, useState } from 'preact/hooks';
import { StateMark } from '../../components/state-mark.js';
import { counted } from './counted.js';
import type { PhoneJob } from './contract.js';
import type { Phone } from './phone.js';
import { addressOf } from './place.js';
import { whenOf } from './time.js';

/** The jobs of today: where one starts. Who has just opened the page and has one job only is led straight to it. */
export function JobList({ phone }: { phone: Phone }) {
  const { jobs, notFetched, halt } = phone.snapshot;
  const [isUpToDate, setUpToDate] = useState(false);
  useEffect(() => void phone.fetchJobs().finally(() => setUpToDate(true)), [phone]);
  useEffect(() => {
    const [only, ...others] = jobs?.jobs ?? [];
    const hasJustOpened = location.hash === '';
    if (isUpToDate && hasJustOpened && only && others.length === 0)
      location.replace(addressOf({ at: 'job', jobId: only.id }));
  }, [isUpToDate, jobs]);
  return (
    <>
      <h1 tabIndex={-1}>Check gear before use</h1>
      <p class="lede">Choose your job.</p>
      {notFetched && !halt ? <p class="note">{notFetched}</p> : null}
      {jobs ? (
        <>
          <ul class="tiles">
            {jobs.jobs.map((job) => (
              <JobTile
                key={job.id}
                job={job}
                isKept={phone.snapshot.bundles.some(({ id }) => id === job.id)}
              />
            ))}
          </ul>
          {jobs.jobs.length === 0 ? <p class="note">No job has gear reserved or out today.</p> : null}
          <p class="faded">List of jobs from {whenOf(jobs.fetchedAt)}.</p>
        </>
      ) : null}
      {!jobs && !isUpToDate ? <p class="note">Fetching the jobs of today …</p> : null}
    </>
  );
}

function JobTile({ job, isKept }: { job: PhoneJob; isKept: boolean }) {
  return (
    <li>
      <a class="tile tile-job" href={addressOf({ at: 'job', jobId: job.id })}>
        <span class="tile-name">
          {job.reference} {job.name}
        </span>
        <span>
          {job.site} · {counted(job.out + job.reserved, 'item')}
        </span>
        <StateMark
          state={isKept ? 'ok' : 'plain'}
          word={
            isKept ? 'on this phone, works without a signal' : 'not on this phone yet: needs a signal once'
          }
        />
      </a>
    </li>
  );
}
