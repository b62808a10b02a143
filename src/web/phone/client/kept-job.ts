import { askedIn, stillCounts } from './begun-check.js';
import type { PhoneBundle, PhoneItem, PhoneKind } from './contract.js';
import type { Snapshot } from './phone.js';
import { standingOf, type Standing } from './standing.js';
import type { BegunCheck } from './store.js';

/** An item with its kind and how it stands on this phone now. */
export interface ItemOnPhone {
  readonly item: PhoneItem;
  readonly kind: PhoneKind | undefined;
  readonly kindName: string;
  readonly standing: Standing;
  /** What its person began to answer and did not save, while it may still become a check. */
  readonly begun: BegunCheck | undefined;
}

/** A job that this phone has. */
export interface KeptJob {
  readonly bundle: PhoneBundle;
  readonly fetchedAt: string;
  readonly items: readonly ItemOnPhone[];
}

/** A job as this phone has it, each item with its standing; undefined where it was never fetched. */
export function keptJob(snapshot: Snapshot, jobId: number): KeptJob | undefined {
  const kept = snapshot.bundles.find(({ id }) => id === jobId);
  if (!kept) return undefined;
  const { bundle, fetchedAt } = kept;
  const { timeZone } = bundle;
  const now = Date.now();
  const items = bundle.items.map((item) => {
    const kind = bundle.checklists.find((each) => each.kind === item.kind);
    const checks = snapshot.checks.filter(({ itemId }) => itemId === item.id);
    const standing = standingOf({ item, bundleDay: bundle.today, timeZone, fetchedAt, checks, now });
    const begun = snapshot.begun.find(
      (each) =>
        each.jobId === jobId &&
        each.itemId === item.id &&
        each.personId === snapshot.me?.id &&
        each.asked === askedIn(kind?.points ?? []) &&
        stillCounts(each.startedAt, { now, timeZone }),
    );
    return { item, kind, kindName: kind?.name ?? item.kind, standing, begun };
  });
  return { bundle, fetchedAt, items };
}
