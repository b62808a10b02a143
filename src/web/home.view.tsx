import type { JobState, JobSummaryView } from '../jobs/jobs.dto.js';
import type { NoticeView } from '../notices/notices.dto.js';
import { Notices } from '../notices/notices.view.js';
import type { Actor } from '../people/actor.js';
import { AddressNote, MailWarningNotes } from '../reminders/preferences/mail-notes.view.js';
import type { MailWarning } from '../reminders/preferences/mail-warnings.js';
import type { StoreView } from '../stores/stores.dto.js';
import { StateMark, type StateKind } from './components/state-mark.js';
import { page } from './page.js';
import { count, day } from './sentences/words.js';

interface HomePage {
  readonly me: Actor;
  readonly jobs: readonly JobSummaryView[];
  readonly stores: readonly StoreView[];
  readonly notices: readonly NoticeView[];
  /** Whether this is the invented firm, which mails to a page of its own. */
  readonly demo: boolean;
  readonly mail: { readonly warnings: readonly MailWarning[]; readonly wantsAddress: boolean };
}

/** The start page: what needs a hand first, then the jobs that are coming, and the way to any item. */
export function homePage({ me, jobs, stores, notices, mail, demo }: HomePage): string {
  const ahead = jobs.filter(({ state }) => state !== 'back' && state !== 'cancelled');
  const flagged = ahead.filter((job) => job.flagged > 0);
  return page(
    { title: 'Start', actor: me, path: '/' },
    <>
      <h1>Good to see you, {me.name.split(' ')[0]}</h1>
      {stores.length === 0 ? <FirstSteps /> : null}
      <Notices notices={notices} />
      {demo ? (
        <p>
          This is the demo. <a href="/mailbox">Read the mail it would have sent</a>
        </p>
      ) : null}
      <MailWarningNotes warnings={mail.warnings} />
      {mail.wantsAddress ? <AddressNote /> : null}
      <p class="actions">
        <a class="button quiet" href="/phone">
          Check gear on the phone
        </a>
      </p>
      {flagged.map((job) => (
        <div class="note note-refused" key={job.id}>
          <p class="note-title">
            <StateMark state="refused" word={`Job ${job.reference} needs a look`} />
          </p>
          <p>
            {count(job.flagged, 'thing is', 'things are')} wrong with the gear promised to {job.name}.{' '}
            <a href={`/jobs/${job.id}`}>See what, and what to take instead</a>
          </p>
        </div>
      ))}
      <div class="two-columns">
        <section>
          <h2>Jobs ahead</h2>
          {ahead.length === 0 ? (
            <p>
              None. <a href="/jobs/new">Enter a job</a>
            </p>
          ) : (
            <ul class="cards">
              {ahead.map((job) => (
                <JobCard key={job.id} job={job} />
              ))}
            </ul>
          )}
        </section>
        <section class="sheet">
          <h2>Look up an item</h2>
          <form action="/register" class="scan" role="search">
            <label for="text">Tag or serial number</label>
            <input id="text" name="text" autocomplete="off" />
            <p class="actions">
              <button type="submit">Look up</button>
            </p>
          </form>
          <h3>Tally boards</h3>
          <ul>
            {stores.map((store) => (
              <li key={store.id}>
                <a href={`/stores/${store.id}`}>{store.name}</a>
              </li>
            ))}
          </ul>
          <p>
            <a href="/quarantine">What waits in quarantine</a>
          </p>
        </section>
      </div>
    </>,
  );
}

const STATES: Readonly<Record<JobState, StateKind>> = {
  planned: 'plain',
  reserved: 'ok',
  out: 'away',
  back: 'plain',
  cancelled: 'plain',
};

function JobCard({ job }: { job: JobSummaryView }) {
  return (
    <li class="card">
      <h3>
        <a href={`/jobs/${job.id}`}>
          {job.reference} {job.name}
        </a>
      </h3>
      <p>
        {day(job.loadOutDay)} to {day(job.backDay)}, from {job.storeName}
      </p>
      <p>
        <StateMark state={STATES[job.state]} word={job.state} />, {job.booked} of {job.needed} items booked
      </p>
    </li>
  );
}

function FirstSteps() {
  return (
    <section class="note">
      <p class="note-title">Three steps to the first job</p>
      <ol>
        <li>
          <a href="/stores">Open a store</a>: the place where the gear is kept.
        </li>
        <li>
          <a href="/register/import">Import the register</a> from a spreadsheet, or{' '}
          <a href="/register/new">add items</a> one by one.
        </li>
        <li>
          <a href="/jobs/new">Enter a job</a> with its panels, and see what it needs.
        </li>
      </ol>
    </section>
  );
}
