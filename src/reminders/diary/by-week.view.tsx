import { addDays, weekday, type Day } from '../../rules/calendar/day.js';
import { Scroll } from '../../web/components/scroll.js';
import { StateMark } from '../../web/components/state-mark.js';
import { count, day, shortDay } from '../../web/sentences/words.js';
import type { DiaryEntry } from './diary-entry.js';
import { reasonsWords, whereWords, WHO_NAMES } from './diary-words.js';
import { Stops } from './due-item.view.js';

type KindName = (kind: string) => string;

/** A page of more is no page; the store and the months narrow it down. */
const MOST_SHOWN = 500;

/** Everything that falls due, the overdue first and then week by week. */
export function ByWeek({ entries, kindName }: { entries: readonly DiaryEntry[]; kindName: KindName }) {
  const shown = entries.slice(0, MOST_SHOWN);
  const overdue = shown.filter((entry) => entry.overdue);
  const weeks = new Map<Day, DiaryEntry[]>();
  for (const entry of shown.filter((each) => !each.overdue)) {
    const monday = addDays(entry.dueOn, 1 - weekday(entry.dueOn));
    weeks.set(monday, [...(weeks.get(monday) ?? []), entry]);
  }
  return (
    <section aria-labelledby="by-week">
      <h2 id="by-week">Everything, week by week</h2>
      {entries.length > shown.length ? (
        <p class="note">
          The first {MOST_SHOWN} of {entries.length} items are listed. Choose a store or fewer months to see
          the others.
        </p>
      ) : null}
      {entries.length === 0 ? <p>Nothing falls due in that time.</p> : null}
      {overdue.length === 0 ? null : (
        <DueTable
          title={`Overdue, ${count(overdue.length, 'item', 'items')}`}
          {...{ kindName }}
          entries={overdue}
        />
      )}
      {[...weeks].map(([monday, inWeek]) => (
        <DueTable
          key={monday}
          title={`Week of ${day(monday)}, ${count(inWeek.length, 'item', 'items')}`}
          kindName={kindName}
          entries={inWeek}
        />
      ))}
    </section>
  );
}

function DueTable({
  title,
  entries,
  kindName,
}: {
  title: string;
  entries: readonly DiaryEntry[];
  kindName: KindName;
}) {
  return (
    <Scroll label={title}>
      <table class="stacked due-table">
        <caption>{title}</caption>
        <thead>
          <tr>
            {['Tag', 'Due', 'What is due', 'Where', 'Who can do it'].map((heading) => (
              <th scope="col" key={heading}>
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {entries.map((entry) => (
            <DueRow key={entry.itemId} entry={entry} kindName={kindName} />
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function DueRow({ entry, kindName }: { entry: DiaryEntry; kindName: KindName }) {
  const { itemId, tag, kind, reasons, who } = entry;
  return (
    <tr>
      <th scope="row">
        <a class="tag" href={`/register/${itemId}`}>
          {tag}
        </a>{' '}
        {kindName(kind)}
      </th>
      <td data-label="Due">
        <DueMark entry={entry} />
      </td>
      <td data-label="What is due" class="whole">
        {reasonsWords(reasons)}
        <Stops entry={entry} />
      </td>
      <td data-label="Where">{whereWords(entry)}</td>
      <td data-label="Who can do it">{WHO_NAMES[who].toLowerCase()}</td>
    </tr>
  );
}

function DueMark({ entry: { overdue, dueOn, stops } }: { entry: DiaryEntry }) {
  if (overdue)
    return (
      <>
        <StateMark state="refused" word="overdue" />, {day(dueOn)}
      </>
    );
  return <StateMark state={stops.length === 0 ? 'plain' : 'due'} word={shortDay(dueOn)} />;
}
