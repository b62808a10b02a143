import { batchAddress } from '../register/item-words.js';
import { Form } from '../web/components/form.js';
import { StateMark } from '../web/components/state-mark.js';
import { count, day, instant } from '../web/sentences/words.js';
import type { NoticeKind } from './notices.js';
import type { NoticeView } from './notices.dto.js';

/** The open notices: what was found, what to do about it, and where. Nothing when there are none. */
export function Notices({ notices }: { notices: readonly NoticeView[] }) {
  if (notices.length === 0) return null;
  return (
    <section aria-label="Notices">
      {notices.map((notice) => (
        <div class="note note-refused" key={notice.id}>
          <h2 class="note-title">
            <StateMark state="refused" word={`${nameOf(notice)}: ${titleOf(notice)}`} />
          </h2>
          <p>
            {notice.what} <span class="faded">{`(${notice.by}, ${instant(notice.raisedAt)})`}</span>
          </p>
          <WhatToDo notice={notice} />
          <Form action={`/notices/${notice.id}/settle`} label={`Settle the notice of ${nameOf(notice)}`}>
            <button type="submit" class="quiet">
              Settled<span class="visually-hidden">: {nameOf(notice)}</span>
            </button>
          </Form>
        </div>
      ))}
    </section>
  );
}

function titleOf({ kind, lastDayOfUse }: NoticeView): string {
  return lastDayOfUse === null ? TITLES[kind] : `last day of use ${day(lastDayOfUse)}, a danger after it`;
}

const TITLES: Readonly<Record<NoticeKind, string>> = {
  immediateDanger: 'a danger was found, it is out of service',
  dangerByDate: 'it becomes a danger on a named day',
  observation: 'a check before use found something to watch',
  batchQuarantined: 'the whole batch was taken out of service',
};

const ADVICE: Readonly<Record<NoticeKind, string>> = {
  immediateDanger: 'Put it aside and mark it, and have a competent person examine it',
  dangerByDate: 'Have it examined before that day, or take it out of service',
  observation: 'Have a look at it, or have a competent person do so',
  batchQuarantined: 'Put all of it aside and mark it, and have a competent person examine each item',
};

function nameOf({ tag, batch }: NoticeView): string {
  return batch ? `Batch ${batch.batch} of ${batch.maker}` : (tag ?? '');
}

/** Where the gear of a notice is looked at. */
function WhichGear({ notice: { itemId, tag, batch, storeName } }: { notice: NoticeView }) {
  if (batch)
    return (
      <a href={batchAddress(batch.batch, batch.maker)}>
        {count(batch.items, 'item', 'items')} of batch {batch.batch}, {storeName}
      </a>
    );
  return (
    <a href={`/register/${itemId}`}>
      {tag}, {storeName}
    </a>
  );
}

function WhatToDo({ notice }: { notice: NoticeView }) {
  const { kind, batch, jobs } = notice;
  return (
    <ul>
      <li>
        {ADVICE[kind]}: <WhichGear notice={notice} />
      </li>
      {jobs.map(({ jobId, reference, from, to }) => (
        <li key={jobId}>
          Job {reference}, {day(from)} to {day(to)}, counts on {batch ? 'some of it' : 'it'}:{' '}
          <a href={`/jobs/${jobId}`}>
            {batch ? 'see which, and what to take instead' : 'see whether it needs another one, and which'}
          </a>
        </li>
      ))}
    </ul>
  );
}
