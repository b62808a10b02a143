import { useRef, useState } from 'preact/hooks';
import type { ViewProps } from './view-props.js';
import { answersOf, NOTHING_ENTERED, photosOf, type Draft } from './answers.js';
import type { ItemOnPhone } from './kept-job.js';
import { addressOf } from './place.js';
import { PointFields } from './point-fields.js';
import { troubleWords } from './problem-words.js';
import { StoreFull } from './queue.js';
import { leaveSavedNote } from './saved-note.js';
import { verdictOf, type Verdict } from './verdict.js';

const FULL =
  'This phone is full: the check is NOT saved. What was saved before is safe. Send what waits or make room on the ' +
  'phone, then press Save again; nothing on this page is lost meanwhile.';

/** What the form is given. */
type FormProps = ViewProps & { readonly jobId: number; readonly found: ItemOnPhone };

/** The checklist of an item, saved on this phone when it is complete. */
export function CheckForm(props: FormProps) {
  const form = useRef<HTMLFormElement>(null);
  const points = props.found.kind?.points ?? [];
  const [draft, setDraft] = useState<Draft>({});
  const { trouble, setTrouble, isSaving, save } = useSaving(props);
  return (
    <form
      ref={form}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        if (isSaving) return;
        firstUnanswered(form.current)?.focus();
        void save(draft);
      }}
    >
      {points.map((point, index) => (
        <PointFields
          key={point.key}
          point={point}
          number={`${index + 1} of ${points.length}`}
          draft={draft[point.key] ?? NOTHING_ENTERED}
          onChange={(change) => {
            setTrouble([]);
            setDraft((now) => ({
              ...now,
              [point.key]: { ...(now[point.key] ?? NOTHING_ENTERED), ...change },
            }));
          }}
        />
      ))}
      {trouble.length > 0 ? <Trouble words={trouble} /> : null}
      <button type="submit" class="big save" disabled={isSaving}>
        {isSaving ? 'Saving …' : 'Save the check'}
      </button>
    </form>
  );
}

/** Saves a draft, or says what is in the way. */
function useSaving({ phone, send, jobId, found: { item, kind } }: FormProps) {
  const [trouble, setTrouble] = useState<readonly string[]>([]);
  const [isSaving, setSaving] = useState(false);
  const save = async (draft: Draft): Promise<void> => {
    const points = kind?.points ?? [];
    const answers = answersOf(points, draft);
    const verdict = verdictOf(points, answers);
    if ('problems' in verdict) return setTrouble(troubleWords(verdict.problems, points));
    setSaving(true);
    const now = new Date();
    const body = {
      jobId,
      checkedAt: now.toISOString(),
      offsetMinutes: -now.getTimezoneOffset(),
      answers,
    };
    try {
      const check = { itemId: item.id, tag: item.tag, body, ...verdict };
      await phone.save(check, photosOf(points, draft));
    } catch (error) {
      setSaving(false);
      return setTrouble([error instanceof StoreFull ? FULL : `The check is NOT saved: ${String(error)}`]);
    }
    leaveSavedNote({ words: savedWords(item.tag, verdict), kind: item.kind, outcome: verdict.outcome });
    location.hash = addressOf({ at: 'job', jobId });
    void send();
  };
  return { trouble, setTrouble, isSaving, save };
}

function firstUnanswered(form: HTMLFormElement | null): HTMLElement | null | undefined {
  return form?.querySelector<HTMLElement>('.point:not(:has(input:checked)) input');
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

function savedWords(tag: string, { outcome }: Verdict): string {
  return outcome === 'fit'
    ? `${tag} passed. Saved on this phone.`
    : `${tag} failed: do not use it. Saved on this phone, and blocked here at once. Keep it apart and tell the storeman.`;
}
