import type { Day } from '../calendar/day.js';
import { type Cure, type CureDays, examineBy } from './cure.js';
import { compareNaturally } from './natural-order.js';
import type {
  Examine,
  LiftExclusion,
  MoveFromStore,
  Remedy,
  RemedyItem,
  Store,
  WaitForReturn,
} from './remedy.js';

/** What a line still misses, and the cures that could close it, in natural tag order. */
export interface Gap {
  readonly lineKey: string;
  readonly open: number;
  readonly cures: readonly Cure[];
  readonly days: CureDays;
}

/** The ways to close a gap with gear of one's own, least effort first. None offers more items than the gap has units. */
export const OWN_GEAR_BY_EFFORT: readonly ((gap: Gap) => readonly Remedy[])[] = [
  liftExclusions,
  movesFromStores,
  examinations,
  waitsForReturn,
];

function liftExclusions({ lineKey, open, cures }: Gap): readonly LiftExclusion[] {
  const items = cures.flatMap((cure) => (cure.kind === 'liftExclusion' ? [cure.item] : [])).slice(0, open);
  return items.length === 0 ? [] : [{ kind: 'liftExclusion', lineKey, items, covers: items.length }];
}

/** One remedy a store, the store with the most items first: that makes the fewest trips. */
function movesFromStores({ lineKey, open, cures }: Gap): readonly MoveFromStore[] {
  const stores = new Map<number, { readonly store: Store; readonly items: RemedyItem[] }>();
  for (const cure of cures) {
    if (cure.kind !== 'moveFromStore') continue;
    const known = stores.get(cure.store.id);
    if (known) known.items.push(cure.item);
    else stores.set(cure.store.id, { store: cure.store, items: [cure.item] });
  }
  const sorted = [...stores.values()].sort(
    (left, right) =>
      right.items.length - left.items.length ||
      compareNaturally(left.store.name, right.store.name) ||
      left.store.id - right.store.id,
  );
  const moves: MoveFromStore[] = [];
  let left = open;
  for (const { store, items } of sorted) {
    const moved = items.slice(0, left);
    if (moved.length === 0) break;
    moves.push({ kind: 'moveFromStore', lineKey, items: moved, covers: moved.length, store });
    left -= moved.length;
  }
  return moves;
}

function examinations({ lineKey, open, cures, days }: Gap): readonly Examine[] {
  const items = cures.flatMap((cure) => (cure.kind === 'examine' ? [cure.item] : [])).slice(0, open);
  if (items.length === 0) return [];
  return [{ kind: 'examine', lineKey, items, covers: items.length, by: examineBy(days) }];
}

/** Those back first are waited for; the job loads out when the last of them is there. */
function waitsForReturn({ lineKey, open, cures }: Gap): readonly WaitForReturn[] {
  const returning = cures.flatMap((cure) => (cure.kind === 'waitForReturn' ? [cure.item] : []));
  returning.sort((left, right) => compareDays(left.loadOutFrom, right.loadOutFrom));
  const items = returning.slice(0, open);
  const last = items.at(-1);
  if (!last) return [];
  return [{ kind: 'waitForReturn', lineKey, items, covers: items.length, loadOutFrom: last.loadOutFrom }];
}

function compareDays(left: Day, right: Day): number {
  return left < right ? -1 : left > right ? 1 : 0;
}
