import { Scroll } from '../web/components/scroll.js';
import { JobCrumbs, JobLinks } from '../jobs/job-links.view.js';
import type { Actor } from '../people/actor.js';
import type { Problem } from '../problem.js';
import type { IdleInspection } from '../rules/due/idle.js';
import { Form } from '../web/components/form.js';
import { StateMark } from '../web/components/state-mark.js';
import { page } from '../web/page.js';
import { idleSentence } from '../web/sentences/idle.js';
import { count, day } from '../web/sentences/words.js';
import { BookingFlagsNote } from './booking-flags.view.js';
import type { BookedItemView } from './booking.dto.js';
import type { CounterSheet } from './counter.service.js';
import { CounterRefusal } from './counter-refusal.view.js';
import { swapsOf, type Swap } from './hand-out-problems.js';
import { ScanField } from './scan-field.js';

interface CounterProps {
  readonly me: Actor;
  readonly sheet: CounterSheet;
  /** The tag that went out or came in last. */
  readonly done?: string | undefined;
  readonly problem?: Problem;
  /** The tag that was refused. */
  readonly tag?: string | undefined;
}

/** Where gear goes out: one scan an item, and on paper the picking list. */
export function handOutPage({ me, sheet, done, problem, tag }: CounterProps): string {
  const { job, booking } = sheet;
  const waiting = booking.items.filter(({ state }) => state === 'reserved');
  return page(
    { title: `Hand out for job ${job.reference}`, actor: me, path: `/jobs/${job.id}/hand-out` },
    <>
      <JobCrumbs job={job} />
      <h1>
        Hand out for job <span class="tag">{job.reference}</span>
      </h1>
      <p class="lede">
        {job.name}, {job.site}. Away from {day(job.loadOutDay)} to {day(job.backDay)}.
      </p>
      {problem ? (
        <Refusal problem={problem} tag={tag} jobId={job.id} />
      ) : (
        <Confirmation done={done} waiting={waiting.length} />
      )}
      <Form action={`/jobs/${job.id}/hand-out`} label="Hand out an item">
        <ScanField />
        <p class="actions">
          <button type="submit">Hand out</button>
        </p>
      </Form>
      <BookingFlagsNote job={job} booking={booking} />
      <PickingList waiting={waiting} sheet={sheet} />
      <Confirmations confirmations={sheet.confirmations} />
      <JobLinks job={job} me={me} here="hand-out" />
    </>,
  );
}

function Confirmation({ done, waiting }: { done: string | undefined; waiting: number }) {
  if (!done) return null;
  return (
    <p class="note note-ok" role="status">
      <StateMark state="away" word={`${done} is out`} />.{' '}
      {waiting === 0 ? 'That was the last one.' : `${count(waiting, 'item is', 'items are')} still to go.`}
    </p>
  );
}

function Refusal({ problem, tag, jobId }: { problem: Problem; tag: string | undefined; jobId: number }) {
  return (
    <>
      <CounterRefusal problem={problem} tag={tag} />
      {swapsOf(problem).map((swap) => (
        <SwapForm key={swap.bookedItemId} swap={swap} tag={tag ?? ''} jobId={jobId} />
      ))}
    </>
  );
}

function SwapForm({ swap, tag, jobId }: { swap: Swap; tag: string; jobId: number }) {
  return (
    <Form action={`/jobs/${jobId}/hand-out`} label={`Take ${tag} instead of ${swap.tag}`}>
      <input type="hidden" name="tag" value={tag} />
      <input type="hidden" name="insteadOf" value={swap.bookedItemId} />
      <p class="actions">
        <button type="submit" class="quiet">
          Take {tag} instead of {swap.tag} ({swap.label})
        </button>
      </p>
    </Form>
  );
}

/** On paper to be ticked and signed: no figure can vouch for these. */
function Confirmations({ confirmations }: Pick<CounterSheet, 'confirmations'>) {
  if (confirmations.length === 0) return null;
  return (
    <section class="sheet">
      <h2>To confirm on site, before the first lift</h2>
      <ul class="choices">
        {confirmations.map(({ text }) => (
          <li key={text}>☐ {text}</li>
        ))}
      </ul>
      <p>Confirmed by, on: ____________________________</p>
    </section>
  );
}

function Idle({ idle }: { idle: IdleInspection | undefined }) {
  return idle === undefined ? null : <p class="caution-line">{idleSentence(idle)}</p>;
}

function PickingList({
  waiting,
  sheet: { labels, booking, idle },
}: {
  waiting: readonly BookedItemView[];
  sheet: CounterSheet;
}) {
  if (waiting.length === 0) return <p>Nothing is waiting to go out.</p>;
  const unfit = new Set(booking.unfit.map(({ item }) => item.id));
  const stores = [...new Set(waiting.map(({ storeName }) => storeName))];
  return (
    <section class="sheet">
      <h2>Still to go</h2>
      {stores.map((store) => (
        <Scroll label={`From ${store}`} key={store}>
          <table>
            <caption>From {store}</caption>
            <thead>
              <tr>
                <th scope="col">Taken</th>
                <th scope="col">Tag</th>
                <th scope="col">For</th>
              </tr>
            </thead>
            <tbody>
              {waiting
                .filter(({ storeName }) => storeName === store)
                .map((item) => (
                  <tr key={item.id}>
                    <td aria-label="not yet">☐</td>
                    <th scope="row" class="tag">
                      {item.tag}
                    </th>
                    <td>
                      {labels.get(item.lineKey) ?? item.lineKey}{' '}
                      {unfit.has(item.id) ? <StateMark state="refused" word="not fit any more" /> : null}
                      <Idle idle={idle.get(item.itemId)} />
                    </td>
                  </tr>
                ))}
            </tbody>
          </table>
        </Scroll>
      ))}
    </section>
  );
}
