import { ItemTile } from './gear-list.js';
import type { ItemOnPhone } from './kept-job.js';

interface UnclearProps {
  readonly text: string;
  /** What it may mean; empty where nothing on the job reads like it. */
  readonly alike: readonly ItemOnPhone[];
  readonly jobId: number;
}

/** A tag that means no one item for certain: nothing is guessed, and the serial number tells them apart. */
export function UnclearTag({ text, alike, jobId }: UnclearProps) {
  if (alike.length === 0)
    return (
      <p class="note note-refused" role="alert">
        {text} is not on the list of this job. Look at the label again, or pick the item below. Do not use
        gear that is not on the list.
      </p>
    );
  return (
    <div class="note note-due" role="alert">
      <p>
        {text} is easily misread. Compare the serial number on the label, and choose the item that carries it.
        Do not use it when none does.
      </p>
      <ul class="tiles tiles-two">
        {alike.map((each) => (
          <ItemTile key={each.item.id} {...each} jobId={jobId} />
        ))}
      </ul>
    </div>
  );
}
