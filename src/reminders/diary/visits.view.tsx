import type { Day } from '../../rules/calendar/day.js';
import { StateMark } from '../../web/components/state-mark.js';
import { count, day, listed } from '../../web/sentences/words.js';
import type { DiaryEntry } from './diary-entry.js';
import type { PlannedVisit } from './diary-overview.service.js';
import { WHO_NAMES } from './diary-words.js';
import { DueItem } from './due-item.view.js';

type KindName = (kind: string) => string;

/** More than one person examines in a day; with every item of a large register the page would not load on a phone. */
const MOST_LISTED = 200;

/** The days on which one visit clears many items, each with what to have ready. */
export function VisitList({
  visits,
  kindName,
  mayExamine,
}: {
  visits: readonly PlannedVisit[];
  kindName: KindName;
  mayExamine: boolean;
}) {
  if (visits.length === 0) return null;
  return (
    <section aria-labelledby="visits">
      <h2 id="visits">Suggested visits</h2>
      <p>
        The fewest days on which someone comes to a store and every item that can be there is examined in
        time. <span class="on-screen">Open one to see what to have ready.</span>
      </p>
      <ol class="choices visits">
        {visits.map((visit) => (
          <li key={`${visit.storeId} ${visit.on}`}>
            <details>
              <summary>
                <VisitLine visit={visit} />
              </summary>
              <DueItems entries={visit.entries} kindName={kindName} mayExamine={mayExamine} />
            </details>
          </li>
        ))}
      </ol>
    </section>
  );
}

function VisitLine({ visit: { who, storeName, on, entries, savesJobs } }: { visit: PlannedVisit }) {
  const word = savesJobs.length === 1 ? 'job' : 'jobs';
  return (
    <>
      {WHO_NAMES[who]} at {storeName} {on === entries[0]?.today ? <Today on={on} /> : <On on={on} />} clears{' '}
      {count(entries.length, 'item', 'items')}
      {savesJobs.length === 0
        ? ''
        : ` and saves ${word} ${listed(savesJobs.map(({ reference }) => reference))}`}
    </>
  );
}

function On({ on }: { on: Day }) {
  return (
    <>
      on <strong>{day(on)}</strong>
    </>
  );
}

/** What is overdue waits for nobody, but few examiners come on the day on which they are asked. */
function Today({ on }: { on: Day }) {
  return (
    <>
      today, <strong>{day(on)}</strong>, or as soon as one can come,
    </>
  );
}

/** Gear that is out until it is due or longer, or late: no visit to its store reaches it in time. */
export function NotReached({ entries, kindName }: { entries: readonly DiaryEntry[]; kindName: KindName }) {
  if (entries.length === 0) return null;
  return (
    <section class="note note-due" aria-labelledby="not-reached">
      <h2 class="note-title" id="not-reached">
        <StateMark state="due" word="No visit to a store reaches these in time" />
      </h2>
      <p>
        They are out until they are due or longer, or not back when they should be. Exchange each before its
        job runs past its due day, and have it examined before it is used again.
      </p>
      <DueItems entries={entries} kindName={kindName} />
    </section>
  );
}

function DueItems({
  entries,
  kindName,
  mayExamine = false,
}: {
  entries: readonly DiaryEntry[];
  kindName: KindName;
  mayExamine?: boolean;
}) {
  const more = entries.length - MOST_LISTED;
  return (
    <ul class="due-items">
      {entries.slice(0, MOST_LISTED).map((entry) => (
        <DueItem key={entry.itemId} entry={entry} kindName={kindName} mayExamine={mayExamine} />
      ))}
      {more > 0 ? <li>and {count(more, 'more item', 'more items')}</li> : null}
    </ul>
  );
}
