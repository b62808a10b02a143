import type { Job } from '../jobs/load-job.js';
import { Exact } from '../rules/quantities/exact.js';
import { Form } from '../web/components/form.js';
import { Refusals } from '../web/components/refusals.js';
import { StateMark } from '../web/components/state-mark.js';
import { Workings } from '../web/components/workings.js';
import { hireSentence, remedySentence, shortSentence } from '../web/sentences/remedy.js';
import { needsSentence } from '../web/sentences/needs.js';
import { count, day, figure } from '../web/sentences/words.js';
import type { ChosenItem, PlannedLine, RefusedItem } from './job-plan.js';

interface LineProps {
  readonly planned: PlannedLine;
  readonly job: Job;
  readonly mayChoose: boolean;
  readonly sources: (key: string) => string;
}

/** One gear line of a plan. */
export function PlannedLineSection({ planned, job, mayChoose, sources }: LineProps) {
  const { line, chosen, served, missing } = planned;
  return (
    <section class="sheet" id={`line-${line.key}`}>
      <h2>
        {line.quantity} × {line.label}
      </h2>
      <p>
        {line.quantity > 0 ? `Each ${needsSentence(line)}. ` : ''}
        {missing > 0 ? (
          <StateMark state="refused" word={shortSentence(missing)} />
        ) : (
          <StateMark state="ok" word="met" />
        )}
        {served > 0
          ? ` ${count(served, 'item has', 'items have')} served and ${served === 1 ? 'is' : 'are'} back.`
          : ''}
      </p>
      {line.unsettled ? (
        <p class="note note-refused">
          No gear is proposed until the need is settled:{' '}
          <a href={`/jobs/${job.id}/calculation`}>see the calculation</a>.
        </p>
      ) : null}
      <details>
        <summary>Working</summary>
        <Workings workings={line.workings} sources={sources} />
      </details>
      <Remedies planned={planned} />
      <div class="two-columns">
        <div>
          <h3>Taken</h3>
          {chosen.length === 0 ? <p>{line.quantity === 0 ? 'None needed.' : 'None.'}</p> : null}
          <ul class="choices">
            {chosen.map((item) => (
              <Chosen key={item.itemId} item={item} {...{ job, planned, mayChoose, sources }} />
            ))}
          </ul>
        </div>
        <Refused {...{ planned, job, mayChoose }} />
      </div>
    </section>
  );
}

function Remedies({ planned: { remedies } }: { planned: PlannedLine }) {
  if (!remedies) return null;
  return (
    <div class="note note-due">
      <p class="note-title">What would close the gap, least effort first</p>
      <ol>
        {remedies.remedies.map((remedy, index) => (
          <li key={index}>{remedySentence(remedy)}</li>
        ))}
      </ol>
      {remedies.wholeHire ? <p>Or hire it all. {hireSentence(remedies.wholeHire)}</p> : null}
    </div>
  );
}

function Chosen({ item, job, planned, mayChoose, sources }: LineProps & { item: ChosenItem }) {
  const { itemId, tag, storeName, ratingRatio, dueOn, held, pinned, workings } = item;
  const why = [
    `from ${storeName}`,
    ratingRatio === undefined ? '' : `rated ${shortRatio(ratingRatio)} times the need`,
    dueOn === undefined ? 'nothing falls due' : `in date through ${day(dueOn)}`,
    held ? 'booked already' : '',
    pinned ? 'pinned' : '',
  ].filter(Boolean);
  return (
    <li>
      <details>
        <summary>
          <StateMark state="ok" word="fit" /> <span class="tag">{tag}</span> {why.join(', ')}
        </summary>
        <p>
          <a href={`/register/${itemId}`}>Rating plate of {tag}</a>
        </p>
        <Workings workings={workings} sources={sources} />
        {mayChoose ? <ChoiceForm job={job} item={item} lineKey={planned.line.key} /> : null}
      </details>
    </li>
  );
}

/** Enough of a ratio to compare by: two decimals, never more than it is. */
function shortRatio(ratio: string): string {
  return figure(Exact.of(ratio).rounded({ places: 2, rounding: 'down' }).toString());
}

function Refused({ planned: { refused, refusedCount, line }, job, mayChoose }: Omit<LineProps, 'sources'>) {
  return (
    <div>
      <h3>Refused</h3>
      {refusedCount === 0 ? <p>None.</p> : null}
      {refusedCount > 0 ? (
        <details open={refusedCount <= 5}>
          <summary>{count(refusedCount, 'item', 'items')} of this kind, and why</summary>
          <ul>
            {refused.map((item) => (
              <RefusedEntry key={item.itemId} item={item} />
            ))}
          </ul>
          {refused.length < refusedCount ? <p>The first {refused.length} by tag are shown.</p> : null}
        </details>
      ) : null}
      {mayChoose ? <PinOther job={job} lineKey={line.key} label={line.label} /> : null}
    </div>
  );
}

function RefusedEntry({ item: { itemId, tag, storeName, refusals } }: { item: RefusedItem }) {
  return (
    <li>
      <a class="tag" href={`/register/${itemId}`}>
        {tag}
      </a>{' '}
      <span class="faded">{storeName}</span>
      <Refusals refusals={refusals} />
    </li>
  );
}

function ChoiceForm({
  job,
  item: { itemId, tag },
  lineKey,
}: {
  job: Job;
  item: ChosenItem;
  lineKey: string;
}) {
  const reasonId = `reason-${lineKey}-${itemId}`;
  return (
    <Form action={`/jobs/${job.id}/plan/choices`} label={`Pin or leave out ${tag}`}>
      <input type="hidden" name="version" value={job.version} />
      <input type="hidden" name="itemId" value={itemId} />
      <input type="hidden" name="lineKey" value={lineKey} />
      <div class="field">
        <label for={reasonId}>Reason</label>
        <input id={reasonId} name="reason" required autocomplete="off" />
      </div>
      <p class="actions">
        <button type="submit" name="choice" value="pin" class="quiet">
          Pin it
        </button>
        <button type="submit" name="choice" value="exclude" class="quiet">
          Leave it out
        </button>
      </p>
    </Form>
  );
}

function PinOther({ job, lineKey, label }: { job: Job; lineKey: string; label: string }) {
  const [tagId, reasonId] = [`pin-tag-${lineKey}`, `pin-reason-${lineKey}`];
  return (
    <details>
      <summary>Pin another item</summary>
      <Form action={`/jobs/${job.id}/plan/choices`} label={`Pin another item for ${label}`}>
        <input type="hidden" name="version" value={job.version} />
        <input type="hidden" name="choice" value="pin" />
        <input type="hidden" name="lineKey" value={lineKey} />
        <div class="fields">
          <div class="field">
            <label for={tagId}>Tag</label>
            <input id={tagId} name="tag" required autocomplete="off" />
          </div>
          <div class="field">
            <label for={reasonId}>Reason</label>
            <input id={reasonId} name="reason" required autocomplete="off" />
          </div>
        </div>
        <button type="submit" class="quiet">
          Pin it
        </button>
      </Form>
    </details>
  );
}
