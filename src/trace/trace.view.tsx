import type { Actor } from '../people/actor.js';
import { SEVERITY_NAMES } from '../inspections/record-words.js';
import { StateMark } from '../web/components/state-mark.js';
import { page } from '../web/page.js';
import { count, day, INSPECTION_NAMES, shortDay } from '../web/sentences/words.js';
import type { DefectTraceView, TracedRecordView, TracedStayView } from './trace.dto.js';

/** From a defect back to the last time the item was found good: every job, day and person in between. */
export function tracePage({ me, trace }: { me: Actor; trace: DefectTraceView }): string {
  const { defect, stays } = trace;
  return page(
    { title: `Defect ${defect.id} of ${defect.tag}`, actor: me, path: `/trace/defects/${defect.id}` },
    <>
      <p class="crumbs">
        <a href="/register">Register</a> › <a href={`/register/${defect.itemId}`}>{defect.tag}</a>
      </p>
      <h1>
        What lies behind defect {defect.id} of <span class="tag">{defect.tag}</span>
      </h1>
      <section class="note note-refused">
        <p class="note-title">{defect.description}</p>
        <p>
          {SEVERITY_NAMES[defect.severity]}, reported on {day(defect.reportedOn)} by{' '}
          {defect.reportedBy ?? 'Tackleroom itself'}.
        </p>
      </section>
      <LastGood trace={trace} />
      <h2>Jobs in between, {stays.length}</h2>
      {stays.length === 0 ? <p>It was out on no job in between.</p> : null}
      <ol class="cards">
        {stays.map((stay) => (
          <StayCard key={`${stay.jobId} ${stay.from}`} stay={stay} />
        ))}
      </ol>
      <p class="caution-line">
        Every lift of a job day counts, since nobody counts them item by item: it may have made fewer, never
        more than were counted. Days without a count are not in the sum.
      </p>
    </>,
  );
}

function LastGood({ trace }: { trace: DefectTraceView }) {
  const { lastGood, lastExamined, lifts, liftsSinceLastGood } = trace;
  return (
    <section class="sheet">
      <h2>Last found good</h2>
      <dl class="pairs">
        <Pair name="Last inspection or check passed">
          {lastGood ? recordWords(lastGood) : 'none on record'}
        </Pair>
        <Pair name="Last examination or inspection passed">
          {lastExamined ? recordWords(lastExamined) : 'none on record: traced back to the first job'}
        </Pair>
        <Pair name="Lifts since the last inspection or check">{liftsSinceLastGood}</Pair>
        <Pair name="Lifts in all the jobs below">{lifts}</Pair>
      </dl>
    </section>
  );
}

function Pair({ name, children }: { name: string; children: string | number }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}

function StayCard({ stay }: { stay: TracedStayView }) {
  const { jobId, jobReference, jobName, site, from, through, liftDays, records, returnRemarks } = stay;
  return (
    <li class="card">
      <h3>
        <a href={`/jobs/${jobId}`}>
          {jobReference} {jobName}
        </a>
      </h3>
      <p>
        {site}. {day(from)} to {through === undefined ? 'now: not back' : day(through)}.
      </p>
      <p>
        <StateMark
          state={stay.sinceLastGood ? 'refused' : 'due'}
          word={
            stay.sinceLastGood
              ? 'after it was last found good'
              : 'before a check or inspection it still passed'
          }
        />
      </p>
      <p>
        Handed out by {stay.handedOutBy ?? 'someone not on record'}
        {through === undefined ? '' : `, taken in by ${stay.broughtBackBy ?? 'someone not on record'}`}.
        {returnRemarks === null ? '' : ` ${returnRemarks}`}
      </p>
      <p>
        {liftDays.length === 0
          ? 'No lifts counted.'
          : `${count(total(liftDays), 'lift', 'lifts')}: ${liftDays.map(({ onDay, lifts }) => `${shortDay(onDay)} ${lifts}`).join(', ')}.`}
      </p>
      {records.length === 0 ? (
        <p>Not checked or inspected on these days.</p>
      ) : (
        <ul>
          {records.map((record) => (
            <li key={record.id}>
              {recordWords(record)}: {record.outcome}
            </li>
          ))}
        </ul>
      )}
      <p>
        <a href={`/jobs/${jobId}/gear-file`}>Gear file of the job</a>
      </p>
    </li>
  );
}

/** A record in a few words: 'thorough examination on 3 May 2026 by A. Body, report R-7'. */
export function recordWords(record: TracedRecordView): string {
  const { type, doneOn, doneBy, reportNumber, clockDoubtful } = record;
  const report = reportNumber === null ? '' : `, report ${reportNumber}`;
  const doubt = clockDoubtful ? ', by a clock in doubt, so that it counts for no day' : '';
  return `${INSPECTION_NAMES[type]} on ${day(doneOn)} by ${doneBy}${report}${doubt}`;
}

function total(days: readonly { readonly lifts: number }[]): number {
  return days.reduce((sum, { lifts }) => sum + lifts, 0);
}
