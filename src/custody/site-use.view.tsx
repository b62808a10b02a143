import { JobCrumbs, JobLinks } from '../jobs/job-links.view.js';
import type { Actor } from '../people/actor.js';
import type { Problem } from '../problem.js';
import { Choice, Field, Form } from '../web/components/form.js';
import { ProblemNote } from '../web/components/problem-note.js';
import { Scroll } from '../web/components/scroll.js';
import { StateMark } from '../web/components/state-mark.js';
import { page } from '../web/page.js';
import { count, day, EVENT_NAMES } from '../web/sentences/words.js';
import { SHOCK_TYPES } from './site-use.dto.js';
import type { SiteUseSheet, UsedItem } from './site-use.service.js';

interface SiteUsePage {
  readonly me: Actor;
  readonly sheet: SiteUseSheet;
  /** How many items a shock was recorded for just now. */
  readonly shocked?: number | undefined;
  readonly form?: Readonly<Record<string, unknown>>;
  readonly problem?: Problem;
}

/** What a crew tells of its gear while it is out: how many lifts it made, and whether something happened to it. */
export function siteUsePage({ me, sheet, shocked, form = {}, problem }: SiteUsePage): string {
  const { job } = sheet;
  return page(
    { title: `Lifts and events of job ${job.reference}`, actor: me, path: `/jobs/${job.id}/use` },
    <>
      <JobCrumbs job={job} />
      <h1>
        Lifts and events of job <span class="tag">{job.reference}</span>
      </h1>
      <p class="lede">
        {job.name}, {job.site}. {day(job.loadOutDay)} to {day(job.backDay)}.
      </p>
      <ProblemNote problem={problem} />
      {shocked === undefined ? null : (
        <p class="note note-due" role="status">
          <StateMark state="due" word={`Recorded for ${count(shocked, 'item', 'items')}`} />. Use none of it
          until it has been examined where the rules of the place ask for that.
        </p>
      )}
      <JobLifts me={me} sheet={sheet} form={form} problem={problem} />
      <SomethingHappened sheet={sheet} form={form} problem={problem} />
      <JobLinks job={job} me={me} here="use" />
    </>,
  );
}

/** The lifts of a job by day, and once its gear has gone out the form to count those of a day. */
export function JobLifts({
  me,
  sheet: { job, lifts, items, lastDay },
  form = {},
  problem,
}: Pick<SiteUsePage, 'me' | 'sheet' | 'form'> & { problem?: Problem | undefined }) {
  const counts = me.roles.some((role) => role !== 'competentPerson');
  return (
    <section class="sheet" id="lifts">
      <h2>Lifts</h2>
      {lifts.days.length === 0 ? (
        <p>None is counted yet.</p>
      ) : (
        <Scroll label="Lifts by day">
          <table>
            <caption>{count(lifts.total, 'lift', 'lifts')} in all, by day</caption>
            <thead>
              <tr>
                <th scope="col">Day</th>
                <th scope="col" class="num">
                  Lifts
                </th>
              </tr>
            </thead>
            <tbody>
              {lifts.days.map(({ onDay, lifts: number }) => (
                <tr key={onDay}>
                  <th scope="row">{day(onDay)}</th>
                  <td class="num">{number}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      )}
      <p>
        Each item that was out counts every lift of the day, whether it hung on it or not: more than it made,
        never fewer. A new count of a day takes the place of the last.
      </p>
      {counts && items.length > 0 ? (
        <Form action={`/jobs/${job.id}/lifts`} label="Count the lifts of a day">
          <div class="fields">
            <Field
              label="Day"
              name="onDay"
              type="date"
              value={text(form['onDay']) || lastDay}
              required
              problem={problem}
            />
            <Field
              label="Lifts made"
              name="lifts"
              type="number"
              value={text(form['lifts'])}
              required
              problem={problem}
            />
          </div>
          <p class="actions">
            <button type="submit">Count them</button>
          </p>
        </Form>
      ) : null}
    </section>
  );
}

function SomethingHappened({
  sheet,
  form = {},
  problem,
}: Pick<SiteUsePage, 'sheet' | 'form'> & { problem: Problem | undefined }) {
  const { job, items, lastDay } = sheet;
  if (items.length === 0) return null;
  const lines = [...new Set(items.map(({ lineLabel }) => lineLabel))];
  return (
    <section class="sheet" id="happened">
      <h2>Something happened</h2>
      <p>
        A load that fell or a lifter that was overloaded strains everything it hung on and was held by. Tick
        what was involved; in doubt leave it ticked. Stop using it.
      </p>
      <Form action={`/jobs/${job.id}/events`} label="Record that something happened">
        <div class="fields">
          <Choice
            label="What happened?"
            name="type"
            value={text(form['type'])}
            options={SHOCK_TYPES.map((value) => ({ value, label: EVENT_NAMES[value] }))}
            problem={problem}
          />
          <Field
            label="When"
            name="happenedOn"
            type="date"
            value={text(form['happenedOn']) || lastDay}
            required
            problem={problem}
          />
        </div>
        <Field label="How" name="remarks" value={text(form['remarks'])} problem={problem} />
        {lines.map((label) => (
          <InvolvedItems
            key={label}
            label={label}
            items={items.filter(({ lineLabel }) => lineLabel === label)}
            chosen={chosenOf(form)}
          />
        ))}
        <p class="actions">
          <button type="submit" class="danger">
            Record it for all that is ticked
          </button>
        </p>
      </Form>
    </section>
  );
}

function InvolvedItems({
  label,
  items,
  chosen,
}: {
  label: string;
  items: readonly UsedItem[];
  chosen: ReadonlySet<number> | undefined;
}) {
  return (
    <fieldset>
      <legend>{label}</legend>
      {items.map(({ itemId, tag, involved }, index) => (
        <label class="tick" key={`${itemId} ${index}`}>
          <input
            type="checkbox"
            name="itemIds[]"
            value={itemId}
            checked={chosen ? chosen.has(itemId) : involved}
          />{' '}
          <span class="tag">{tag}</span>
        </label>
      ))}
    </fieldset>
  );
}

/** What was ticked when the form was sent; undefined of a form that is shown for the first time. */
function chosenOf(form: Readonly<Record<string, unknown>>): ReadonlySet<number> | undefined {
  const ids = form['itemIds'];
  return Array.isArray(ids) ? new Set(ids.map(Number)) : undefined;
}

function text(value: unknown): string {
  return typeof value === 'string' || typeof value === 'number' ? String(value) : '';
}
