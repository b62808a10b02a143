import { useEffect, useRef, useState } from 'preact/hooks';
import { answeredIn, NOTHING_ENTERED } from './draft.js';
import type { ItemOnPhone } from './kept-job.js';
import { PointFields } from './point-fields.js';
import type { BegunCheck } from './store.js';
import { useDraft } from './use-draft.js';
import { useSaving } from './use-saving.js';
import type { ViewProps } from './view-props.js';

/** What the form is given. */
type FormProps = ViewProps & {
  readonly jobId: number;
  readonly timeZone: string;
  readonly found: ItemOnPhone;
  /** The answers that it goes on from. */
  readonly begun: BegunCheck | undefined;
};

/** The checklist of an item, saved on this phone when it is complete. */
export function CheckForm({ phone, send, jobId, timeZone, found, begun }: FormProps) {
  const form = useRef<HTMLFormElement>(null);
  const [photosInMaking, setPhotosInMaking] = useState(0);
  const isBusy = photosInMaking > 0;
  const points = found.kind?.points ?? [];
  const { draft, startedAt, isKept, enter } = useDraft(phone, { jobId, found, begun });
  const { trouble, setTrouble, isSaving, save } = useSaving({ phone, send, jobId, timeZone, found });
  useEffect(() => {
    if (begun) showFirstUnanswered(form.current);
  }, [begun]);
  return (
    <form
      ref={form}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        if (isSaving || isBusy) return;
        void save(draft, startedAt);
        showFirstUnanswered(form.current);
      }}
    >
      {points.map((point, index) => (
        <PointFields
          key={point.key}
          point={point}
          number={`${index + 1} of ${points.length}`}
          draft={draft[point.key] ?? NOTHING_ENTERED}
          onChange={(change) => {
            if (isSaving) return;
            setTrouble([]);
            enter(point.key, change);
          }}
          onPhotoMaking={(isMaking) => setPhotosInMaking((count) => count + (isMaking ? 1 : -1))}
        />
      ))}
      <div class="save-bar">
        {trouble.length > 0 ? <Trouble words={trouble} /> : null}
        {isKept ? null : (
          <p class="note note-due" role="alert">
            This phone is full: these answers are lost when the page is closed. Make room, or save the check
            now.
          </p>
        )}
        <p role="status">
          {answeredIn(draft)} of {points.length} answered
        </p>
        <button type="submit" class="big" disabled={isSaving || isBusy}>
          {saveWords(isSaving, isBusy)}
        </button>
      </div>
    </form>
  );
}

function saveWords(isSaving: boolean, isBusy: boolean): string {
  if (isSaving) return 'Saving …';
  return isBusy ? 'Wait for the photo …' : 'Save the check';
}

/** Puts the first point without an answer at the top of the screen, clear of the bar below. */
function showFirstUnanswered(form: HTMLFormElement | null): void {
  const point = form?.querySelector('.point:not(:has(input:checked))');
  point?.scrollIntoView();
  point?.querySelector('input')?.focus({ preventScroll: true });
}

function Trouble({ words }: { words: readonly string[] }) {
  return (
    <div class="note note-refused" role="alert">
      <p class="note-title">Not saved yet</p>
      <ul>
        {words.map((each) => (
          <li key={each}>{each}</li>
        ))}
      </ul>
    </div>
  );
}
