import { useState } from 'preact/hooks';
import { answersOf, photosOf } from './answers.js';
import { stillCounts } from './begun-check.js';
import type { Draft } from './draft.js';
import type { ItemOnPhone } from './kept-job.js';
import { addressOf } from './place.js';
import { troubleWords } from './problem-words.js';
import { StoreFull } from './queue.js';
import { leaveSavedNote } from './saved-note.js';
import { verdictOf, type Verdict } from './verdict.js';
import type { ViewProps } from './view-props.js';

const FULL =
  'This phone is full: the check is NOT saved. What was saved before is safe. Leave this page open. Delete pictures ' +
  'or films from the phone, or go where there is a signal and press Send now, for photos that were sent make room. ' +
  'Then press Save again.';

const TOO_OLD =
  'These answers are of yesterday or of an earlier shift, and the gear has been used since. Go back to the gear of ' +
  'the job, open the item again and look at every point anew.';

type SavingOf = ViewProps & {
  readonly jobId: number;
  readonly timeZone: string;
  readonly found: ItemOnPhone;
};

/** Saves a draft, or says what is in the way. */
export function useSaving({ phone, send, jobId, timeZone, found: { item, kind } }: SavingOf) {
  const [trouble, setTrouble] = useState<readonly string[]>([]);
  const [isSaving, setSaving] = useState(false);
  const save = async (draft: Draft, startedAt: string | undefined): Promise<void> => {
    const points = kind?.points ?? [];
    const answers = answersOf(points, draft);
    const verdict = verdictOf({ ...kind, points }, answers);
    if ('problems' in verdict) return setTrouble(troubleWords(verdict.problems, points));
    const now = new Date();
    if (startedAt && !stillCounts(startedAt, { now: now.getTime(), timeZone })) return setTrouble([TOO_OLD]);
    setSaving(true);
    const checkedAt = now.toISOString();
    const body = { jobId, checkedAt, offsetMinutes: -now.getTimezoneOffset(), answers };
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

function savedWords(tag: string, { outcome }: Verdict): string {
  return outcome === 'fit'
    ? `${tag} passed. Saved on this phone.`
    : `${tag} failed: do not use it. Saved on this phone, and blocked here at once. Keep it apart and tell the storeman.`;
}
