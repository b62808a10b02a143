import { StateMark } from '../../web/components/state-mark.js';
import { count, day, listed } from '../../web/sentences/words.js';
import type { DiaryEntry } from './diary-entry.js';
import type { PlannedVisit } from './diary-overview.service.js';
import { WHO_NAMES } from './diary-words.js';
import { DueItem } from './due-item.view.js';

type KindName = (kind: string) => string;

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
        time. Open one to see what to have ready.
      </p>
      <ol class="choices visits">
        {visits.map((visit) => (
          <li key={`${visit.storeId} ${visit.on}`}>
            <details>
              <summary>
                <VisitLine visit={visit} />
              </summary>
              <ul class="due-items">
                {visit.entries.map((entry) => (
                  <DueItem key={entry.itemId} entry={entry} kindName={kindName} mayExamine={mayExamine} />
                ))}
              </ul>
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
      {WHO_NAMES[who]} at {storeName} on <strong>{day(on)}</strong> clears{' '}
      {count(entries.length, 'item', 'items')}
      {savesJobs.length === 0
        ? ''
        : ` and saves ${word} ${listed(savesJobs.map(({ reference }) => reference))}`}
    </>
  );
}

/** Gear that is out until after it is due, or late: a visit to its store comes to nothing. */
export function NotReached({ entries, kindName }: { entries: readonly DiaryEntry[]; kindName: KindName }) {
  if (entries.length === 0) return null;
  return (
    <section class="note note-due" aria-labelledby="not-reached">
      <h2 class="note-title" id="not-reached">
        <StateMark state="due" word="No visit to a store reaches these in time" />
      </h2>
      <p>They are out until after they are due, or not back when they should be: exchange them before.</p>
      <ul class="due-items">
        {entries.map((entry) => (
          <DueItem key={entry.itemId} entry={entry} kindName={kindName} />
        ))}
      </ul>
    </section>
  );
}
