import type { Actor } from '../../people/actor.js';
import type { KindDefinition } from '../../rules/gear/kind.js';
import { Choice } from '../../web/components/form.js';
import { StateMark } from '../../web/components/state-mark.js';
import { page } from '../../web/page.js';
import { count, day } from '../../web/sentences/words.js';
import { ByWeek } from './by-week.view.js';
import type { DiaryEntry } from './diary-entry.js';
import { isOverdueOut } from './diary-order.js';
import type { Overview } from './diary-overview.service.js';
import { DueItem } from './due-item.view.js';
import { LoadAhead } from './load-ahead.view.js';
import { NotReached, VisitList } from './visits.view.js';
import { WaysToHear } from './ways-to-hear.view.js';

/** What the page of the diary shows. */
export interface DiaryPage {
  readonly me: Actor;
  readonly overview: Overview;
  readonly kinds: readonly KindDefinition[];
  /** What keeps what falls due from being told by mail, each a whole sentence. */
  readonly warnings: readonly string[];
}

/** The due diary: what cannot wait, the visits that clear most, and everything by week. */
export function diaryPage({ me, overview, kinds, warnings }: DiaryPage): string {
  const { entries, visits, notAtStore, overdue, weeks, catchingUp } = overview;
  const kindName = (key: string) => kinds.find(({ kind }) => kind === key)?.name ?? key;
  const mayExamine = me.roles.includes('competentPerson');
  return page(
    { title: 'Due diary', actor: me, path: '/diary' },
    <>
      <h1>Due diary</h1>
      <p class="faded">{whatItShows(overview)}</p>
      <p class="lede">{summary(overview)}</p>
      <WaysToHear me={me} />
      {warnings.map((warning) => (
        <p class="note note-due" key={warning}>
          <StateMark state="due" word="Mail:" /> {warning}
        </p>
      ))}
      {catchingUp === 0 ? null : <CatchingUp marks={catchingUp} />}
      <OutOverdue entries={entries.filter(isOverdueOut)} kindName={kindName} />
      <AskedFor overview={overview} />
      <LoadAhead overdue={overdue} weeks={weeks} />
      <VisitList visits={visits} kindName={kindName} mayExamine={mayExamine} />
      <NotReached entries={notAtStore.filter((entry) => !isOverdueOut(entry))} kindName={kindName} />
      <ByWeek entries={entries} kindName={kindName} />
    </>,
  );
}

/** The form that says so is not printed. */
function whatItShows({ stores, storeId, today }: Overview): string {
  return `${stores.find(({ id }) => id === storeId)?.name ?? 'Every store'}, ${day(today)}`;
}

function summary({ entries, overdue, through }: Overview): string {
  const out = entries.filter(isOverdueOut).length;
  const ahead = entries.length - overdue;
  const late =
    overdue === 0
      ? 'Nothing is overdue.'
      : `${count(overdue, 'item is', 'items are')} overdue${out === 0 ? '' : `, ${out} of them out on a job`}.`;
  const falls = ahead === 1 ? 'falls' : 'fall';
  const soon = ahead === 0 ? 'Nothing else falls' : `${overdue === 0 ? ahead : `${ahead} more`} ${falls}`;
  return `${late} ${soon} due by ${day(through)}.`;
}

function CatchingUp({ marks }: { marks: number }) {
  return (
    <p class="note note-due">
      <StateMark state="due" word="Not complete yet:" /> the rules have changed, and {marks} due days are
      being worked out again. Until that is done, an item that now falls due earlier than before may be
      missing here. Look again in a few minutes.
    </p>
  );
}

function AskedFor({ overview: { stores, storeId, monthsAhead } }: { overview: Overview }) {
  return (
    <form method="get" action="/diary" class="sheet" aria-label="What to look at">
      <div class="fields">
        <Choice
          label="Store"
          name="storeId"
          value={String(storeId ?? '')}
          blank="every store"
          options={stores.map(({ id, name }) => ({ value: String(id), label: name }))}
        />
        <Choice
          label="Look ahead"
          name="monthsAhead"
          value={String(monthsAhead)}
          options={[1, 2, 3, 6, 12].map((months) => ({
            value: String(months),
            label: count(months, 'month', 'months'),
          }))}
        />
        <p class="field">
          <button type="submit">Show</button>
        </p>
      </div>
    </form>
  );
}

function OutOverdue({
  entries,
  kindName,
}: {
  entries: readonly DiaryEntry[];
  kindName: (kind: string) => string;
}) {
  if (entries.length === 0) return null;
  return (
    <section class="note note-refused" aria-labelledby="out-overdue">
      <h2 class="note-title" id="out-overdue">
        <StateMark state="refused" word="Overdue and out on a job: not to be used" />
      </h2>
      <p>Have it put aside on site now and send another, or have it examined where it is.</p>
      <ul class="due-items">
        {entries.map((entry) => (
          <DueItem key={entry.itemId} entry={entry} kindName={kindName} />
        ))}
      </ul>
    </section>
  );
}
