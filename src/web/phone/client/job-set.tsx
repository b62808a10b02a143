import { useEffect, useState } from 'preact/hooks';
import { counted } from './counted.js';
import { Crumbs } from './crumbs.js';
import { gearGroups, type GearGroup } from './gear-groups.js';
import { GroupList, RefusedList } from './gear-list.js';
import { keptJob } from './kept-job.js';
import { meantBy } from './meant-items.js';
import type { Phone } from './phone.js';
import { addressOf } from './place.js';
import { ScanBox, type ReadTag } from './scan-box.js';
import { takeSavedNote, type SavedNote } from './saved-note.js';
import { whenOf } from './time.js';
import { UnclearTag } from './unclear-tag.js';

/** The gear of a job by its kinds with a state mark each, and the field and the camera to pick an item with. */
export function JobSet({ phone, jobId }: { phone: Phone; jobId: number }) {
  const [saved] = useState(takeSavedNote);
  const [unclear, setUnclear] = useState<ReadTag>();
  useEffect(() => void phone.fetchJob(jobId), [phone, jobId]);
  const kept = keptJob(phone.snapshot, jobId);
  if (!kept) return <NotKept reason={phone.snapshot.notFetched} />;
  const { bundle, fetchedAt, items } = kept;
  const groups = gearGroups(items, saved?.kind);
  const refused = items.filter(({ standing }) => standing.state === 'refused');
  const choose = (read: ReadTag) => {
    const { certain } = meantBy(bundle.items, read);
    if (certain) location.hash = addressOf({ at: 'item', jobId, itemId: certain.id });
    else setUnclear(read);
  };
  const meant = unclear && meantBy(bundle.items, unclear);
  return (
    <>
      <Crumbs href="#/" words="Jobs" me={phone.snapshot.me} />
      <h1 tabIndex={-1}>
        {bundle.job.reference} {bundle.job.name}
      </h1>
      {saved ? <SavedWords saved={saved} group={groups.find(({ kind }) => kind === saved.kind)} /> : null}
      <Progress groups={groups} total={items.length} refused={refused.length} />
      <ScanBox onTag={choose} />
      {unclear && meant && !meant.certain ? (
        <UnclearTag
          text={unclear.text}
          alike={items.filter(({ item }) => meant.alike.includes(item))}
          jobId={jobId}
        />
      ) : null}
      {groups.map((group) => (
        <GroupList key={`${group.kind} ${group.toCheck === 0}`} group={group} jobId={jobId} />
      ))}
      <RefusedList items={refused} jobId={jobId} />
      <p class="faded">List of gear from {whenOf(fetchedAt)}.</p>
    </>
  );
}

interface ProgressProps {
  readonly groups: readonly GearGroup[];
  readonly total: number;
  readonly refused: number;
}

function Progress({ groups, total, refused }: ProgressProps) {
  const checked = groups.reduce((sum, group) => sum + group.checked, 0);
  const toCheck = groups.reduce((sum, group) => sum + group.toCheck, 0);
  return (
    <>
      <p class="progress">
        {checked} of {counted(total, 'item')} checked, {toCheck === 0 ? 'none left' : `${toCheck} to check`}
      </p>
      {refused > 0 ? (
        <button type="button" class="to-refused" onClick={showRefused}>
          <span aria-hidden="true">✕</span> Do not use: {counted(refused, 'item')}
        </button>
      ) : null}
    </>
  );
}

/** The list is long, and the address after `#` is where one is on the page: the jump is made by hand. */
function showRefused(): void {
  const heading = document.querySelector<HTMLElement>('#do-not-use h2');
  heading?.scrollIntoView();
  heading?.focus({ preventScroll: true });
}

function SavedWords({ saved, group }: { saved: SavedNote; group: GearGroup | undefined }) {
  const isFailed = saved.outcome === 'unfit';
  return (
    <div class={`note ${isFailed ? 'note-refused' : 'note-ok'}`} role="status">
      <p class="note-title">
        <span aria-hidden="true">{isFailed ? '✕' : '●'}</span> {saved.words}
      </p>
      {group && group.toCheck > 0 ? (
        <p>
          {group.plural}: {group.toCheck} left. Take the next one and scan its label.
        </p>
      ) : null}
    </div>
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
