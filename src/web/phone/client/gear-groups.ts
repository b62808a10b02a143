import type { ItemOnPhone } from './kept-job.js';

/** The gear of one kind on a job, but for what may not be used: that stands apart. */
export interface GearGroup {
  readonly kind: string;
  /** Its name for many, and for one: `Ratchet straps`, `Ratchet strap`. */
  readonly plural: string;
  readonly name: string;
  /** What is to be checked first, then what has a fault noted, then what passed. */
  readonly items: readonly ItemOnPhone[];
  /** How many there are on the job with those that may not be used, how many of them were checked, and how many may not be used. */
  readonly total: number;
  readonly checked: number;
  readonly refused: number;
  readonly toCheck: number;
}

const ORDER = ['plain', 'due', 'ok', 'refused', 'away'] as const;

/**
 * Gear by its kind: the kind that was checked last first, for someone who checks straps goes on with straps; then what
 * has items left to check; then what is done. Otherwise in the order of the list.
 */
export function gearGroups(items: readonly ItemOnPhone[], lastKind?: string): readonly GearGroup[] {
  const kinds = [...new Set(items.map(({ item }) => item.kind))];
  const groups = kinds.map((kind) =>
    groupOf(
      kind,
      items.filter(({ item }) => item.kind === kind),
    ),
  );
  return groups.sort((one, other) => rank(one, lastKind) - rank(other, lastKind));
}

function groupOf(kind: string, all: readonly ItemOnPhone[]): GearGroup {
  const items = all
    .filter(({ standing }) => standing.state !== 'refused')
    .sort((one, other) => ORDER.indexOf(one.standing.state) - ORDER.indexOf(other.standing.state));
  const toCheck = items.filter(({ standing }) => standing.state === 'plain').length;
  const [first] = all;
  const name = first?.kindName ?? kind;
  return {
    kind,
    name,
    plural: first?.kind?.plural ?? name,
    items,
    total: all.length,
    checked: items.length - toCheck,
    refused: all.length - items.length,
    toCheck,
  };
}

function rank({ kind, toCheck }: GearGroup, lastKind: string | undefined): number {
  if (toCheck === 0) return 2;
  return kind === lastKind ? 0 : 1;
}
