import { useEffect, useState } from 'preact/hooks';
import { StateMark } from '../../components/state-mark.js';
import type { PhoneItem } from './contract.js';
import { counted } from './counted.js';
import { findItem } from './find-item.js';
import { keptJob, type ItemOnPhone } from './kept-job.js';
import type { Phone } from './phone.js';
import { addressOf } from './place.js';
import { ScanBox } from './scan-box.js';
import { takeSavedNote, type SavedNote } from './saved-note.js';
import { tagFrom } from './scan.js';
import { whenOf } from './time.js';

/** The gear of a job with a state mark each, and the field and the camera to pick an item with. */
export function JobSet({ phone, jobId }: { phone: Phone; jobId: number }) {
  const [saved] = useState(takeSavedNote);
  const [unknown, setUnknown] = useState<string>();
  useEffect(() => void phone.fetchJob(jobId), [phone, jobId]);
  const kept = keptJob(phone.snapshot, jobId);
  if (!kept) return <NotKept reason={phone.snapshot.notFetched} />;
  const { bundle, fetchedAt, items } = kept;
  const toCheck = sameKindFirst(
    items.filter(({ standing }) => standing.state === 'plain'),
    saved?.kind,
  );
  const refused = items.filter(({ standing }) => standing.state === 'refused');
  const checked = items.filter(({ standing }) => ['ok', 'due'].includes(standing.state));
  const choose = (text: string) => {
    const item = findItem(bundle.items, tagFrom(text));
    if (item) location.hash = addressOf({ at: 'item', jobId, itemId: item.id });
    else setUnknown(tagFrom(text));
  };
  return (
    <>
      <p class="crumbs">
        <a href="#/">Jobs</a>
      </p>
      <h1 tabIndex={-1}>
        {bundle.job.reference} {bundle.job.name}
      </h1>
      {saved ? <SavedWords saved={saved} /> : null}
      <p class="progress">
        {checked.length} of {counted(items.length, 'item')} checked
        {toCheck.length === 0 ? ', none left to check' : `, ${toCheck.length} to check`}
      </p>
      <ScanBox onText={choose} />
      {unknown === undefined ? null : (
        <p class="note note-refused" role="alert">
          {unknown} is not on the list of this job, or more than one reads like it. Look at the label again,
          or pick the item below. Do not use gear that is not on the list.
        </p>
      )}
      <Items heading="To check" items={toCheck} jobId={jobId} />
      <Items heading="Do not use" items={refused} jobId={jobId} />
      <Items heading="Checked today" items={checked} jobId={jobId} />
      <p class="faded">List of gear from {whenOf(fetchedAt)}.</p>
    </>
  );
}

/** Someone who checks straps goes on with straps. */
function sameKindFirst(items: readonly ItemOnPhone[], kind: string | undefined): readonly ItemOnPhone[] {
  return [...items].sort((one, other) => Number(other.item.kind === kind) - Number(one.item.kind === kind));
}

function Items({ heading, items, jobId }: { heading: string; items: readonly ItemOnPhone[]; jobId: number }) {
  if (items.length === 0) return null;
  return (
    <section>
      <h2>
        {heading} ({items.length})
      </h2>
      <ul class="tiles">
        {items.map((each) => (
          <ItemTile key={each.item.id} {...each} jobId={jobId} />
        ))}
      </ul>
    </section>
  );
}

function ItemTile({ item, kindName, standing, jobId }: ItemOnPhone & { jobId: number }) {
  return (
    <li>
      <a class={`tile tile-${standing.state}`} href={addressOf({ at: 'item', jobId, itemId: item.id })}>
        <span class="tile-name tag">{item.tag}</span>
        <StateMark state={standing.state} word={standing.word} />
        <span>{nameOf(kindName, item)}</span>
      </a>
    </li>
  );
}

function nameOf(kindName: string, { serial }: PhoneItem): string {
  return serial ? `${kindName}, serial ${serial}` : kindName;
}

function SavedWords({ saved: { words, outcome } }: { saved: SavedNote }) {
  return (
    <p class={`note ${outcome === 'unfit' ? 'note-refused' : 'note-ok'}`} role="status">
      {words}
    </p>
  );
}

function NotKept({ reason }: { reason: string | undefined }) {
  return (
    <>
      <p class="crumbs">
        <a href="#/">Jobs</a>
      </p>
      <h1 tabIndex={-1}>This job is not on this phone yet</h1>
      <p class="note">{reason ?? 'Fetching it …'}</p>
      <p>Open it once while there is a signal. From then on it works without one.</p>
    </>
  );
}
