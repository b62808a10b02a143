import { useEffect, useRef, useState } from 'preact/hooks';
import { askedIn, withinRoom } from './begun-check.js';
import { NOTHING_ENTERED, type Draft, type PointDraft } from './draft.js';
import type { ItemOnPhone } from './kept-job.js';
import type { Phone } from './phone.js';
import { StoreFull } from './queue.js';
import type { BegunCheck } from './store.js';

interface DraftOf {
  readonly jobId: number;
  readonly found: ItemOnPhone;
  readonly begun: BegunCheck | undefined;
}

/** What is entered to a checklist, kept on this phone at every change until the check is saved. */
export function useDraft(phone: Phone, { jobId, found, begun }: DraftOf) {
  const [draft, setDraft] = useState<Draft>(begun?.draft ?? {});
  const [isKept, setKept] = useState(true);
  // A photo comes in late: it is entered to what stands then, not to what stood when it was taken.
  const latest = useRef(draft);
  const startedAt = useRef(begun?.startedAt);
  useEffect(() => () => void phone.reloadEverywhere(), [phone]);
  const enter = (key: string, change: Partial<PointDraft>): void => {
    startedAt.current ??= new Date().toISOString();
    latest.current = {
      ...latest.current,
      [key]: { ...(latest.current[key] ?? NOTHING_ENTERED), ...change },
    };
    setDraft(latest.current);
    const asked = askedIn(found.kind?.points ?? []);
    const entered = { asked, startedAt: startedAt.current, ...withinRoom(latest.current) };
    phone
      .keepBegun({ jobId, itemId: found.item.id, ...entered })
      .then(() => setKept(true))
      .catch((error: unknown) => {
        setKept(false);
        if (!(error instanceof StoreFull)) throw error;
      });
  };
  return { draft, startedAt: startedAt.current, isKept, enter };
}
