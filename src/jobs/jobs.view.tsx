import type { Actor } from '../people/actor.js';
import { StateMark } from '../web/components/state-mark.js';
import { page } from '../web/page.js';
import { count, day } from '../web/sentences/words.js';
import { jobMark, keepsJobs } from './job-words.js';
import type { JobListView, JobSummaryView } from './jobs.dto.js';
import { Scroll } from '../web/components/scroll.js';

/** The list of jobs. */
export function jobsPage({ me, list }: { me: Actor; list: JobListView }): string {
  return page(
    { title: 'Jobs', actor: me, path: '/jobs' },
    <>
      <h1>Jobs</h1>
      <p class="lede">What is going out, what is out, and what needs a second look.</p>
      {keepsJobs(me) ? (
        <p class="actions">
          <a class="button" href="/jobs/new">
            New job
          </a>
        </p>
      ) : null}
      {list.jobs.length === 0 ? <p>There are no jobs here yet.</p> : <JobTable jobs={list.jobs} />}
      {list.next ? (
        <p class="actions">
          <a class="button quiet" rel="next" href={`/jobs?after=${encodeURIComponent(list.next)}`}>
            More jobs
          </a>
        </p>
      ) : null}
    </>,
  );
}

function JobTable({ jobs }: { jobs: readonly JobSummaryView[] }) {
  return (
    <Scroll label="Jobs">
      <table class="stacked">
        <caption>Jobs not yet back come first, by load-out day; then past ones.</caption>
        <thead>
          <tr>
            <th scope="col">Job</th>
            <th scope="col">Name and site</th>
            <th scope="col">Load out</th>
            <th scope="col">Back</th>
            <th scope="col">Store</th>
            <th scope="col">Gear</th>
            <th scope="col">Flags</th>
          </tr>
        </thead>
        <tbody>
          {jobs.map((job) => (
            <tr key={job.id}>
              <th scope="row" data-label="Job">
                <a class="tag" href={`/jobs/${job.id}`}>
                  {job.reference}
                </a>
              </th>
              <td data-label="Name and site">
                {job.name}
                <br />
                <span class="faded">{job.site}</span>
              </td>
              <td data-label="Load out">{day(job.loadOutDay)}</td>
              <td data-label="Back">{day(job.backDay)}</td>
              <td data-label="Store">{job.storeName}</td>
              <td data-label="Gear">
                <StateMark {...jobMark(job)} />
              </td>
              <td data-label="Flags">
                {job.flagged > 0 ? (
                  <StateMark state="refused" word={count(job.flagged, 'flag', 'flags')} />
                ) : (
                  'none'
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}
