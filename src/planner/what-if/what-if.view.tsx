import { Fragment } from 'preact';
import type { KindDefinition } from '../../rules/gear/kind.js';
import { Refusals } from '../../web/components/refusals.js';
import { count } from '../../web/sentences/words.js';
import type { UnfitHeldItem } from './compare-bookings.js';
import { ItemDifferences } from './item-differences.view.js';
import { LineDifferences } from './line-differences.view.js';
import type { WhatIf } from './what-if.service.js';

/** What a change would do, above the form that can still be changed or saved. */
export function WhatIfSheet({ found, kinds }: { found: WhatIf; kinds: readonly KindDefinition[] }) {
  const { lines, items, booking, nothingChanges } = found;
  return (
    <section class="sheet" aria-labelledby="what-if">
      <h2 id="what-if">What would change</h2>
      {nothingChanges ? (
        <p class="note note-ok">
          Nothing changes: the gear lines, the gear chosen and what is booked stay as they are.
        </p>
      ) : (
        <>
          <Unfit items={booking.unfit} />
          <Surplus tags={booking.surplus.map(({ tag }) => tag)} />
          <LineDifferences lines={lines} kinds={kinds} />
          <ItemDifferences items={items} unfit={booking.unfit} />
        </>
      )}
      <p class="hint">
        Nothing is saved yet. What other jobs hold stays theirs: it is refused to this one, whatever the
        change.
      </p>
    </section>
  );
}

function Unfit({ items }: { items: readonly UnfitHeldItem[] }) {
  if (items.length === 0) return null;
  return (
    <section class="note note-refused" aria-label="Booked gear that would not be fit">
      <p class="note-title">
        <span class="mark" aria-hidden="true">
          ✕
        </span>{' '}
        {count(items.length, 'booked item', 'booked items')} would not be fit
      </p>
      {alike(items).map(({ first: { itemId, state, lineLabel, already, refusals }, tags }) => (
        <div key={itemId}>
          <p>
            <Tags tags={tags} /> ({state}) for {lineLabel.toLowerCase()}
            {already ? ', unfit already; the reasons would be' : ''}:
          </p>
          <Refusals refusals={refusals} />
        </div>
      ))}
    </section>
  );
}

function Surplus({ tags }: { tags: readonly string[] }) {
  if (tags.length === 0) return null;
  return (
    <p class="note note-due">
      Reserved, but no longer needed: <Tags tags={tags} />. What is reserved stays so until you release it or
      bring the booking in line with the plan.
    </p>
  );
}

/** Items that are unfit for one line for the same reasons. */
interface Alike {
  readonly first: UnfitHeldItem;
  readonly tags: string[];
}

function alike(items: readonly UnfitHeldItem[]): readonly Alike[] {
  const groups = new Map<string, Alike>();
  for (const item of items) {
    const { lineKey, state, already, refusals, tag } = item;
    const key = JSON.stringify([lineKey, state, already, refusals]);
    const group = groups.get(key);
    if (group) group.tags.push(tag);
    else groups.set(key, { first: item, tags: [tag] });
  }
  return [...groups.values()];
}

function Tags({ tags }: { tags: readonly string[] }) {
  return (
    <>
      {tags.map((tag, index) => (
        <Fragment key={tag}>
          {index > 0 ? ', ' : ''}
          <span class="tag">{tag}</span>
        </Fragment>
      ))}
    </>
  );
}
