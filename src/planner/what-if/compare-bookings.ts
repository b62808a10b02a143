import { isDeepStrictEqual } from 'node:util';
import type { BookedItem } from '../../custody/booked-items.js';
import type { BookingCheck, UnfitItem } from '../../custody/check-booking.js';
import type { Refusal } from '../../rules/fitness/refusal.js';

/** How an item is held: what is back or lost is held no more. */
export const HELD_STATES = ['reserved', 'out'] as const;

/** Something reserved for the job or out on it. */
export interface HeldItemName extends Pick<BookedItem, 'itemId' | 'tag' | 'lineKey'> {
  readonly state: (typeof HELD_STATES)[number];
}

/** Something booked that a change makes unfit for its line, or unfit for other reasons than before. */
export interface UnfitHeldItem extends HeldItemName {
  readonly lineLabel: string;
  /** True when it is unfit already as the job stands. */
  readonly already: boolean;
  /** Every reason after the change. */
  readonly refusals: readonly Refusal[];
}

/** What a change does to what is booked. */
export interface BookingDifference {
  readonly unfit: readonly UnfitHeldItem[];
  /** Reserved, and needed now but not after the change. */
  readonly surplus: readonly HeldItemName[];
}

/** What the check of a booking finds after a change that it does not find before it. */
export function compareBookings(before: BookingCheck, after: BookingCheck): BookingDifference {
  return {
    unfit: after.unfit.flatMap((item) => {
      const was = before.unfit.find(({ row }) => row.id === item.row.id);
      return was && isDeepStrictEqual(was.refusals, item.refusals)
        ? []
        : [unfitHeld(item, was !== undefined)];
    }),
    surplus: after.surplus.filter(({ id }) => !before.surplus.some((row) => row.id === id)).map(nameOf),
  };
}

function unfitHeld({ row, lineLabel, refusals }: UnfitItem, already: boolean): UnfitHeldItem {
  return { ...nameOf(row), lineLabel, already, refusals };
}

function nameOf({ itemId, tag, state, lineKey }: BookedItem): HeldItemName {
  return { itemId, tag, state: state === 'out' ? 'out' : 'reserved', lineKey };
}
