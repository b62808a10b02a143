import type { PhoneBundle, PhoneItem, PhoneKind } from './contract.js';
import type { Snapshot } from './phone.js';
import { standingOf, type Standing } from './standing.js';

/** An item with its kind and how it stands on this phone now. */
export interface ItemOnPhone {
  readonly item: PhoneItem;
  readonly kind: PhoneKind | undefined;
  readonly kindName: string;
  readonly standing: Standing;
}

/** A job that this phone has. */
export interface KeptJob {
  readonly bundle: PhoneBundle;
  readonly fetchedAt: string;
  readonly items: readonly ItemOnPhone[];
}

/** A job as this phone has it, each item with its standing; undefined where it was never fetched. */
export function keptJob({ bundles, checks }: Snapshot, jobId: number): KeptJob | undefined {
  const kept = bundles.find(({ id }) => id === jobId);
  if (!kept) return undefined;
  const { bundle, fetchedAt } = kept;
  const items = bundle.items.map((item) => {
    const kind = bundle.checklists.find((each) => each.kind === item.kind);
    const own = checks.filter(({ itemId }) => itemId === item.id);
    const standing = standingOf({
      item,
      bundleDay: bundle.today,
      timeZone: bundle.timeZone,
      fetchedAt,
      checks: own,
      now: Date.now(),
    });
    return { item, kind, kindName: kind?.name ?? item.kind, standing };
  });
  return { bundle, fetchedAt, items };
}
