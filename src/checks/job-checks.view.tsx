import { JobCrumbs, JobLinks } from '../jobs/job-links.view.js';
import type { JobView } from '../jobs/jobs.dto.js';
import type { Actor } from '../people/actor.js';
import { toDay, addDays } from '../rules/calendar/day.js';
import { Scroll } from '../web/components/scroll.js';
import { StateMark, type StateKind } from '../web/components/state-mark.js';
import { page } from '../web/page.js';
import { CONDITION_NAMES, day as dayText, instant } from '../web/sentences/words.js';
import type { CheckState, CoverageView, CoveredItemView, LineCoverageView } from './coverage.dto.js';
import { nextUnchecked } from './next-unchecked.js';

/** What the page of a job's checks shows. */
export interface JobChecksProps {
  readonly me: Actor;
  readonly job: JobView;
  readonly coverage: CoverageView;
}

/** Who checked what of a job's gear on a day, and the way to the next check. */
export function jobChecksPage({ me, job, coverage }: JobChecksProps): string {
  const { day, today, lines, others, out } = coverage;
  return page(
    { title: `Checks of job ${job.reference}`, actor: me, path: `/jobs/${job.id}/checks` },
    <>
      <JobCrumbs job={job} />
      <h1>Checks before use, {day === today ? 'today' : dayText(day)}</h1>
      <JobLinks job={job} me={me} here="checks" />
      <NextCheck jobId={job.id} coverage={coverage} />
      {lines.length === 0 ? <p>No gear was out on this day.</p> : null}
      {lines.length > 0 && !out ? <p>Nothing is out yet: this is what is reserved.</p> : null}
      {lines.map((line) => (
        <Line key={line.lineKey} line={line} jobId={job.id} coverage={coverage} />
      ))}
      {others.length > 0 ? (
        <section class="note note-due">
          <h2 class="note-title">Checked here, but not on the booking</h2>
          <p>{others.map(({ tag }) => tag).join(', ')}: find out how they came to the site.</p>
        </section>
      ) : null}
      <OtherDays jobId={job.id} day={day} today={today} />
      <p>
        A check counts for one day, and for none where the clock of the device is in doubt. Whoever uses the
        gear checks it; nobody passes it for another.
      </p>
    </>,
  );
}

/** The way to the next item that nobody checked today. */
function NextCheck({ jobId, coverage }: { jobId: number; coverage: CoverageView }) {
  if (coverage.day !== coverage.today || coverage.lines.length === 0) return null;
  const next = nextUnchecked(coverage);
  if (next === undefined) return <p>Nothing is left to check today.</p>;
  return (
    <p class="actions">
      <a class="button" href={`/register/${next}/check?job=${jobId}`}>
        Check the next one
      </a>
    </p>
  );
}

function Line({ line, jobId, coverage }: { line: LineCoverageView; jobId: number; coverage: CoverageView }) {
  return (
    <section class="sheet">
      <h2>{line.label}</h2>
      <p>{line.sentence}.</p>
      <Scroll label={`Checks of ${line.label}`}>
        <table>
          <caption>Each item with its check; times in UTC</caption>
          <thead>
            <tr>
              <th scope="col">Item</th>
              <th scope="col">Check</th>
              <th scope="col">By</th>
              {coverage.day === coverage.today ? <th scope="col">Do</th> : null}
            </tr>
          </thead>
          <tbody>
            {line.items.map((item) => (
              <tr key={item.itemId}>
                <th scope="row">
                  <a class="tag" href={`/register/${item.itemId}`}>
                    {item.tag}
                  </a>
                </th>
                <td>
                  <StateMark {...markOf(item)} />
                </td>
                <td>{lastCheck(item)}</td>
                {coverage.day === coverage.today ? (
                  <td>
                    <a href={`/register/${item.itemId}/check?job=${jobId}`}>
                      Check<span class="visually-hidden"> {item.tag}</span>
                    </a>
                  </td>
                ) : null}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </section>
  );
}

const MARKS: Readonly<Record<CheckState, StateKind>> = { checked: 'ok', failed: 'refused', unchecked: 'due' };

function markOf({ state, condition }: CoveredItemView): { state: StateKind; word: string } {
  if (state === 'failed' && condition !== 'inService')
    return { state: 'refused', word: CONDITION_NAMES[condition] };
  return { state: MARKS[state], word: state === 'failed' ? 'failed: check it again' : state };
}

function lastCheck({ checkedBy, checkedAt, clockDoubtful }: CoveredItemView): string {
  if (checkedBy === undefined || checkedAt === undefined) return '';
  const doubt = clockDoubtful === true ? ', by a clock in doubt: it does not count' : '';
  return `${checkedBy}, ${instant(checkedAt)}${doubt}`;
}

function OtherDays({ jobId, day, today }: { jobId: number; day: string; today: string }) {
  const before = addDays(toDay(day), -1);
  return (
    <p class="actions">
      <a class="button quiet" href={`/jobs/${jobId}/checks?day=${before}`}>
        The day before
      </a>
      {day === today ? null : (
        <a class="button quiet" href={`/jobs/${jobId}/checks`}>
          Today
        </a>
      )}
    </p>
  );
}
