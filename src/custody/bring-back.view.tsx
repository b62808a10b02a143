import { JobCrumbs, JobLinks } from '../jobs/job-links.view.js';
import type { Actor } from '../people/actor.js';
import type { Problem } from '../problem.js';
import { Field, Form } from '../web/components/form.js';
import { StateMark } from '../web/components/state-mark.js';
import { page } from '../web/page.js';
import { count, day } from '../web/sentences/words.js';
import type { BookedItemView, ReturnCondition } from './booking.dto.js';
import { CounterRefusal } from './counter-refusal.view.js';
import type { CounterSheet } from './counter.service.js';
import { ScanField } from './scan-field.js';

interface BringBackProps {
  readonly me: Actor;
  readonly sheet: CounterSheet;
  /** The tag that came in last. */
  readonly done?: string | undefined;
  readonly problem?: Problem;
  /** What was typed, to show it again beside what is wrong with it. */
  readonly form?: Readonly<Record<string, unknown>>;
}

const CONDITIONS: Readonly<Record<ReturnCondition, string>> = {
  good: 'Back in good order',
  damaged: 'Back, damaged: into quarantine',
  missing: 'Did not come back',
};

/** Where gear comes in: one scan an item, with how it came back. */
export function bringBackPage({ me, sheet, done, problem, form = {} }: BringBackProps): string {
  const { job, booking } = sheet;
  const out = booking.items.filter(({ state }) => state === 'out');
  return page(
    { title: `Bring back from job ${job.reference}`, actor: me, path: `/jobs/${job.id}/bring-back` },
    <>
      <JobCrumbs job={job} />
      <h1>
        Bring back from job <span class="tag">{job.reference}</span>
      </h1>
      <p class="lede">
        {job.name}, {job.site}. Due back on {day(job.backDay)}.
      </p>
      <CounterRefusal problem={problem} />
      {done && !problem ? (
        <p class="note note-ok" role="status">
          <StateMark state="ok" word={`${done} is taken in`} />.{' '}
          {out.length === 0
            ? 'Everything is accounted for.'
            : `${count(out.length, 'item is', 'items are')} still out.`}
        </p>
      ) : null}
      <Form action={`/jobs/${job.id}/bring-back`} label="Bring an item back">
        <ScanField value={text(form['tag'])} />
        <fieldset>
          <legend>How it came back</legend>
          {Object.entries(CONDITIONS).map(([value, label]) => (
            <label class="tick" key={value}>
              <input
                type="radio"
                name="condition"
                value={value}
                checked={value === (text(form['condition']) || 'good')}
              />{' '}
              <span>{label}</span>
            </label>
          ))}
        </fieldset>
        <Field
          label="Remarks"
          name="remarks"
          value={text(form['remarks'])}
          hint="Needed for damage: what the one who examines it should look at."
          problem={problem}
        />
        <p class="actions">
          <button type="submit">Take it in</button>
        </p>
      </Form>
      <p>
        Dropped or overloaded on site?{' '}
        <a href={`/jobs/${job.id}/use#happened`}>Say so for all gear involved</a>.
      </p>
      <StillOut out={out} labels={sheet.labels} />
      <Missing sheet={sheet} />
      <JobLinks job={job} me={me} here="bring-back" />
    </>,
  );
}

function StillOut({ out, labels }: { out: readonly BookedItemView[]; labels: CounterSheet['labels'] }) {
  return (
    <section class="sheet">
      <h2>Still out</h2>
      {out.length === 0 ? <p>Nothing is out on this job.</p> : null}
      <ul>
        {out.map(({ id, tag, lineKey }) => (
          <li key={id}>
            <span class="tag">{tag}</span> {labels.get(lineKey) ?? lineKey}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Missing({ sheet: { job, booking } }: { sheet: CounterSheet }) {
  const missing = booking.items.filter(({ state }) => state === 'missing');
  if (missing.length === 0) return null;
  return (
    <section class="note note-refused">
      <p class="note-title">Did not come back</p>
      <ul>
        {missing.map(({ id, itemId, tag }) => (
          <li key={id}>
            <span class="tag">{tag}</span>
            <Form action={`/jobs/${job.id}/found`} label={`${tag} was found`}>
              <input type="hidden" name="itemId" value={itemId} />
              <button type="submit" class="quiet">
                {tag} was found
              </button>
            </Form>
          </li>
        ))}
      </ul>
    </section>
  );
}

function text(value: unknown): string {
  return typeof value === 'string' ? value : '';
}
