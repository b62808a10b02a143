import { StateMark } from '../../components/state-mark.js';
import type { GearGroup } from './gear-groups.js';
import type { ItemOnPhone } from './kept-job.js';
import { addressOf } from './place.js';
import { timeOf } from './time.js';

/** The gear of one kind under its count. A kind that is done is folded up, so that the next one is in sight. */
export function GroupList({ group, jobId }: { group: GearGroup; jobId: number }) {
  if (group.items.length === 0) return null;
  const tiles = (
    <ul class="tiles tiles-two">
      {group.items.map((each) => (
        <ItemTile key={each.item.id} {...each} jobId={jobId} />
      ))}
    </ul>
  );
  if (group.toCheck === 0)
    return (
      <details class="group">
        <summary>
          <GroupHeading group={group} />
        </summary>
        {tiles}
      </details>
    );
  return (
    <section class="group">
      <GroupHeading group={group} />
      {tiles}
    </section>
  );
}

/** What may not be used, apart from the rest, each with its reason. */
export function RefusedList({ items, jobId }: { items: readonly ItemOnPhone[]; jobId: number }) {
  if (items.length === 0) return null;
  return (
    <section class="refused-list" id="do-not-use">
      <h2 tabIndex={-1}>
        <StateMark state="refused" word={`Do not use (${items.length})`} />
      </h2>
      <p>Keep it apart from the rest.</p>
      <ul class="tiles">
        {items.map(({ item, kindName, standing }) => (
          <li key={item.id}>
            <a class="tile tile-refused" href={addressOf({ at: 'item', jobId, itemId: item.id })}>
              <span class="tile-name tag">{item.tag}</span>
              <StateMark state="refused" word={standing.word} />
              <span>{item.serial ? `${kindName}, serial ${item.serial}` : kindName}</span>
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}

function GroupHeading({ group: { plural, checked, total, refused, toCheck } }: { group: GearGroup }) {
  return (
    <h2>
      {plural}: {checked} of {total} checked
      {refused > 0 ? (
        <>
          {', '}
          <StateMark state="refused" word={`${refused} not to be used`} />
        </>
      ) : null}
      {toCheck === 0 ? (
        <>
          {', '}
          <StateMark state="ok" word="done" />
        </>
      ) : null}
    </h2>
  );
}

/** An item to open, with its mark and the serial number to compare. */
export function ItemTile({ item, standing, begun, jobId }: ItemOnPhone & { jobId: number }) {
  return (
    <li>
      <a
        class={`tile tile-item tile-${standing.state}`}
        href={addressOf({ at: 'item', jobId, itemId: item.id })}
      >
        <span class="tile-name tag">{item.tag}</span>
        {begun ? (
          <StateMark state="due" word={`begun ${timeOf(begun.startedAt)}`} />
        ) : (
          <StateMark state={standing.state} word={standing.word} />
        )}
        {item.serial ? <span class="serial">serial {item.serial}</span> : null}
      </a>
    </li>
  );
}
