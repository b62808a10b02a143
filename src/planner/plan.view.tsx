import { JobCrumbs, JobLinks } from '../jobs/job-links.view.js';
import { keepsJobs } from '../jobs/job-words.js';
import type { Job } from '../jobs/load-job.js';
import type { Actor } from '../people/actor.js';
import type { Problem } from '../problem.js';
import { Form } from '../web/components/form.js';
import { ProblemNote } from '../web/components/problem-note.js';
import { StateMark } from '../web/components/state-mark.js';
import { page } from '../web/page.js';
import { shortSentence, unmetPinSentence } from '../web/sentences/remedy.js';
import { count, day } from '../web/sentences/words.js';
import type { JobPlan } from './job-plan.js';
import { PlannedLineSection } from './planned-line.view.js';
import type { Proposal } from './planner.service.js';

/** What the plan of a job needs. `sources` gives the title of a source by its key. */
export interface PlanProps {
  readonly me: Actor;
  readonly proposal: Proposal;
  readonly sources: (key: string) => string;
  readonly problem?: Problem;
}

/** The plan of a job: for each line what to take beside what is refused and why, and what would close a gap. */
export function planPage({ me, proposal, sources, problem }: PlanProps): string {
  const { job, plan, today } = proposal;
  const needed = plan.lines.filter(({ line, chosen }) => line.quantity > 0 || chosen.length > 0);
  const dropped = plan.lines.filter((line) => !needed.includes(line));
  const mayChoose = keepsJobs(me) && !job.cancelled;
  return page(
    { title: `Plan for job ${job.reference}`, actor: me, path: `/jobs/${job.id}/plan` },
    <>
      <JobCrumbs job={job} />
      <h1>
        Gear for job <span class="tag">{job.reference}</span>
      </h1>
      <p class="lede">
        Away from {day(job.loadOutDay)} to {day(job.backDay)}, loading at {job.store.name}. Made on{' '}
        {day(today)} from the register as it is now.
      </p>
      <ProblemNote problem={problem} />
      <JobLinks job={job} me={me} here="plan" />
      <Outcome plan={plan} />
      {mayChoose ? <Reserve job={job} plan={plan} /> : null}
      <UnmetPins plan={plan} />
      <Transports plan={plan} />
      {needed.map((line) => (
        <PlannedLineSection
          key={line.line.key}
          planned={line}
          job={job}
          mayChoose={mayChoose}
          sources={sources}
        />
      ))}
      {dropped.length > 0 ? <p>Not needed: {dropped.map(({ line }) => line.label).join(', ')}.</p> : null}
      <Choices job={job} plan={plan} mayChoose={mayChoose} />
    </>,
  );
}

function Outcome({ plan: { lines } }: { plan: JobPlan }) {
  const short = lines.filter(({ missing }) => missing > 0);
  if (short.length === 0)
    return <p class="note note-ok">Every line can be met with gear that is fit on these days.</p>;
  return (
    <section class="note note-due" aria-label="Shortfalls">
      <p class="note-title">{count(short.length, 'line is', 'lines are')} short</p>
      <ul>
        {short.map(({ line, missing }) => (
          <li key={line.key}>
            <a href={`#line-${line.key}`}>{line.label}</a>: {shortSentence(missing)}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Reserve({ job, plan }: { job: Job; plan: JobPlan }) {
  const fresh = plan.lines.flatMap(({ chosen }) => chosen).filter(({ held }) => !held).length;
  return (
    <Form action={`/jobs/${job.id}/plan/reservation`} label="Reserve the gear">
      <input type="hidden" name="version" value={job.version} />
      <p class="actions">
        <button type="submit">
          {fresh > 0
            ? `Reserve ${count(fresh, 'item', 'items')}`
            : 'Bring the booking in line with this plan'}
        </button>
      </p>
      <p class="hint">
        Each item is asked again as it is reserved. What is reserved but unfit or no longer needed is given
        up.
      </p>
    </Form>
  );
}

function UnmetPins({ plan: { unmetPins } }: { plan: JobPlan }) {
  if (unmetPins.length === 0) return null;
  return (
    <section class="note note-refused" aria-label="Pins that could not be honoured">
      <p class="note-title">Pins that could not be honoured</p>
      <ul>
        {unmetPins.map(({ itemId, lineKey, tag, reason }) => (
          <li key={`${itemId} ${lineKey}`}>{unmetPinSentence(tag ?? `Item ${itemId}`, reason)}</li>
        ))}
      </ul>
    </section>
  );
}

function Transports({ plan: { transports } }: { plan: JobPlan }) {
  if (transports.length < 2) return null;
  return (
    <section class="sheet">
      <h2>Where it comes from</h2>
      <dl class="pairs">
        {transports.map(({ storeId, storeName, tags }) => (
          <div key={storeId}>
            <dt>
              {storeName} ({count(tags.length, 'item', 'items')})
            </dt>
            <dd class="tags">
              {tags.map((tag) => (
                <span class="tag" key={tag}>
                  {tag}
                </span>
              ))}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

function Choices({ job, plan, mayChoose }: { job: Job; plan: JobPlan; mayChoose: boolean }) {
  if (job.choices.length === 0) return null;
  const items = plan.lines.flatMap(({ chosen, refused }) => [...chosen, ...refused]);
  const tags = new Map(items.map(({ itemId, tag }) => [itemId, tag]));
  return (
    <section class="sheet">
      <h2>The storeman's choices</h2>
      <ul>
        {job.choices.map(({ itemId, choice, reason }) => (
          <li key={itemId}>
            <span class="tag">{tags.get(itemId) ?? `Item ${itemId}`}</span>{' '}
            <StateMark state="plain" word={choice === 'pin' ? 'pinned' : 'left out'} />: {reason}
            {mayChoose ? (
              <Form
                action={`/jobs/${job.id}/plan/choices`}
                label={`Take back the choice of ${tags.get(itemId) ?? itemId}`}
              >
                <input type="hidden" name="version" value={job.version} />
                <input type="hidden" name="itemId" value={itemId} />
                <input type="hidden" name="choice" value="none" />
                <button type="submit" class="quiet">
                  Take it back
                </button>
              </Form>
            ) : null}
          </li>
        ))}
      </ul>
    </section>
  );
}
