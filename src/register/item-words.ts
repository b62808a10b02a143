import type { StateKind } from '../web/components/state-mark.js';
import { day, figure } from '../web/sentences/words.js';
import type { Currency } from '../rules/due/due-date.js';
import type { Condition } from '../rules/gear/gear.js';
import type { Marking } from '../rules/quantities/marking.js';
import type { CustodyView } from './register.dto.js';

/** A state of an item as a mark shows it. */
export interface StateWord {
  readonly state: StateKind;
  readonly word: string;
}

export const CURRENCY_WORDS: Readonly<Record<Currency, StateWord>> = {
  inDate: { state: 'ok', word: 'in date' },
  dueSoon: { state: 'due', word: 'due soon' },
  outOfDate: { state: 'refused', word: 'out of date' },
  neverExamined: { state: 'refused', word: 'never examined' },
  notRequired: { state: 'plain', word: 'no examination asked' },
};

export const CONDITION_WORDS: Readonly<Record<Condition, StateWord>> = {
  inService: { state: 'ok', word: 'in service' },
  quarantined: { state: 'refused', word: 'quarantined' },
  underRepair: { state: 'refused', word: 'under repair' },
  scrapped: { state: 'refused', word: 'scrapped' },
};

/** Where the item is, in words. */
export function custodyWord({ state, jobReference, to, late }: CustodyView): StateWord {
  if (state === 'missing') return { state: 'refused', word: 'missing' };
  if (state === 'inStore') return { state: 'plain', word: 'in store' };
  const until = to === undefined ? '' : day(to);
  if (state === 'reserved') return { state: 'away', word: `reserved for ${jobReference} until ${until}` };
  return late
    ? { state: 'refused', word: `out on ${jobReference}, due back ${until}` }
    : { state: 'away', word: `out on ${jobReference} until ${until}` };
}

/** A rating as it stands on the plate: `500 kg per side`. */
export function markingText({ value, unit, condition }: Marking): string {
  return condition === undefined ? figure(value, unit) : `${figure(value, unit)} ${condition}`;
}

/** Where all items of a maker's batch are looked at together. */
export function batchAddress(batch: string, maker: string): string {
  return `/trace/batches/${encodeURIComponent(batch)}?maker=${encodeURIComponent(maker)}`;
}
