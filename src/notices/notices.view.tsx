import { Form } from '../web/components/form.js';
import { StateMark } from '../web/components/state-mark.js';
import { day, instant } from '../web/sentences/words.js';
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
            <StateMark state="refused" word={`${notice.tag}: ${TITLES[notice.kind]}`} />
          </h2>
          <p>
            {notice.what} <span class="faded">{`(${notice.by}, ${instant(notice.raisedAt)})`}</span>
          </p>
          <WhatToDo notice={notice} />
          <Form action={`/notices/${notice.id}/settle`} label={`Settle the notice of ${notice.tag}`}>
            <button type="submit" class="quiet">
              Settled<span class="visually-hidden">: {notice.tag}</span>
            </button>
          </Form>
        </div>
      ))}
    </section>
  );
}

const TITLES: Readonly<Record<NoticeKind, string>> = {
  immediateDanger: 'a danger was found, it is out of service',
  dangerByDate: 'it becomes a danger on a named day',
  observation: 'a check before use found something to watch',
};

const ADVICE: Readonly<Record<NoticeKind, string>> = {
  immediateDanger: 'Put it aside and mark it, and have a competent person examine it',
  dangerByDate: 'Have it examined before that day, or take it out of service',
  observation: 'Have a look at it, or have a competent person do so',
};

function WhatToDo({ notice: { kind, itemId, tag, storeName, jobs } }: { notice: NoticeView }) {
  return (
    <ul>
      <li>
        {ADVICE[kind]}:{' '}
        <a href={`/register/${itemId}`}>
          {tag}, {storeName}
        </a>
      </li>
      {jobs.map(({ jobId, reference, from, to }) => (
        <li key={jobId}>
          Job {reference}, {day(from)} to {day(to)}, counts on it:{' '}
          <a href={`/jobs/${jobId}`}>see whether it needs another one, and which</a>
        </li>
      ))}
    </ul>
  );
}
