import { sortedNaturally } from '../../rules/allocation/natural-order.js';
import type { Refusal } from '../../rules/fitness/refusal.js';
import type { GearLine } from '../../rules/lines/need.js';
import type { ChosenItem, PlannedLine } from '../job-plan.js';
import { isSameLine } from './compare-lines.js';

/** What a change does to an item that one of the plans chooses. */
export const ITEM_CHANGES = ['joins', 'leaves', 'moves'] as const;

/** Why an item leaves: it is not fit any more, its line is gone, or other gear serves or less is needed. */
export const LEAVING_REASONS = ['not_fit', 'line_gone', 'not_chosen'] as const;

/** A line by its key, with the name that people read. */
export type LineName = Pick<GearLine, 'key' | 'label'>;

/** An item on one plan and not on the other, or on another line. */
export interface ItemDifference {
  readonly itemId: number;
  readonly tag: string;
  readonly storeName: string;
  readonly change: (typeof ITEM_CHANGES)[number];
  readonly before?: LineName;
  readonly after?: LineName;
  /** Of an item that leaves. */
  readonly reason?: (typeof LEAVING_REASONS)[number];
  /** Every reason why an item that leaves may not serve its line any more. */
  readonly refusals: readonly Refusal[];
}

/** Says why an item may not serve a line of the later plan; nothing when it may. */
export type RefusalsOf = (itemId: number, line: GearLine) => readonly Refusal[];

/** The items that join, leave or change lines, in natural order of their tags. */
export function compareItems(
  before: readonly PlannedLine[],
  after: readonly PlannedLine[],
  refusalsOf: RefusalsOf,
): ItemDifference[] {
  const [earlier, later] = [placesOf(before), placesOf(after)];
  const differences = [
    ...[...earlier.values()].flatMap((was) => {
      const is = later.get(was.item.itemId);
      if (!is) return [leaving(was, after, refusalsOf)];
      if (is.line.key === was.line.key) return [];
      return [{ ...itemOf(is), change: 'moves' as const, before: nameOf(was.line), after: nameOf(is.line) }];
    }),
    ...[...later.values()]
      .filter(({ item }) => !earlier.has(item.itemId))
      .map((is) => ({ ...itemOf(is), change: 'joins' as const, after: nameOf(is.line) })),
  ];
  return sortedNaturally(differences, ({ tag }) => tag);
}

/** The numbers of the items that the first plan chooses and the second does not. */
export function leavingItemIds(before: readonly PlannedLine[], after: readonly PlannedLine[]): number[] {
  const later = placesOf(after);
  return [...placesOf(before).keys()].filter((itemId) => !later.has(itemId));
}

interface Place {
  readonly item: ChosenItem;
  readonly line: GearLine;
}

function placesOf(lines: readonly PlannedLine[]): ReadonlyMap<number, Place> {
  return new Map(
    lines.flatMap(({ line, chosen }) => chosen.map((item) => [item.itemId, { item, line }] as const)),
  );
}

function leaving(
  { item, line }: Place,
  after: readonly PlannedLine[],
  refusalsOf: RefusalsOf,
): ItemDifference {
  const named = { ...itemOf({ item }), change: 'leaves' as const, before: nameOf(line) };
  const now = after.find((other) => isSameLine(other.line, line) && other.line.quantity > 0)?.line;
  if (!now) return { ...named, reason: 'line_gone' };
  const refusals = refusalsOf(item.itemId, now);
  return { ...named, reason: refusals.length > 0 ? 'not_fit' : 'not_chosen', refusals };
}

function itemOf({ item: { itemId, tag, storeName } }: Pick<Place, 'item'>) {
  return { itemId, tag, storeName, refusals: [] };
}

function nameOf({ key, label }: GearLine): LineName {
  return { key, label };
}
