import type { UnmailedNotice } from '../../notices/unmailed-notices.js';
import type { NewFlag } from './told-flags.js';
import type { Replacement } from './unfit-booking.js';

/** An unfit booking with what to take instead, where there is anything. */
export type ReplacedFlag = NewFlag & { readonly replacement: Replacement | undefined };

/** All that is new of one item or one batch: told as one, however many notices and bookings it concerns. */
export interface UrgentMatter {
  readonly item: { readonly id: number; readonly tag: string; readonly kind: string } | null;
  readonly notices: readonly UnmailedNotice[];
  readonly flags: readonly ReplacedFlag[];
}

/** Brings together what is about the same item: dangers first, in the order they were found, then unfit bookings. */
export function urgentMatters(
  notices: readonly UnmailedNotice[],
  flags: readonly ReplacedFlag[],
): UrgentMatter[] {
  const matters = new Map<
    string,
    { item: UrgentMatter['item']; notices: UnmailedNotice[]; flags: ReplacedFlag[] }
  >();
  const matterOf = (key: string, item: UrgentMatter['item']) => {
    const matter = matters.get(key) ?? { item, notices: [], flags: [] };
    matters.set(key, matter);
    return matter;
  };
  for (const notice of notices)
    matterOf(notice.item ? `item ${notice.item.id}` : `notice ${notice.id}`, notice.item).notices.push(
      notice,
    );
  for (const flag of flags) {
    const { itemId: id, tag, kind } = flag.booking;
    matterOf(`item ${id}`, { id, tag, kind }).flags.push(flag);
  }
  return [...matters.values()];
}

/** How grave a matter is, by what decides what to do about it. */
export type Gravity = 'danger' | 'batch' | 'dangerByDate' | 'booking';

/** The gravest that was found of an item decides. */
export function gravityOf({ notices }: UrgentMatter): Gravity {
  const kinds = notices.map(({ kind }) => kind);
  if (kinds.includes('immediateDanger')) return 'danger';
  if (kinds.includes('batchQuarantined')) return 'batch';
  return kinds.includes('dangerByDate') ? 'dangerByDate' : 'booking';
}

/** What makes a mail about these matters this mail and no other. */
export function mattersKey(matters: readonly UrgentMatter[]): string {
  return matters
    .flatMap(({ notices, flags }) => [
      ...notices.map(({ id }) => `notice ${id}`),
      ...flags.map(({ key }) => key),
    ])
    .sort()
    .join('\n');
}
