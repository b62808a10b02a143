import type { Day } from '../../rules/calendar/day.js';
import type { Refusal } from '../../rules/fitness/refusal.js';

/** Booked gear that is not fit for its job any more, as the rules see it now. */
export interface UnfitBooking {
  readonly jobId: number;
  readonly reference: string;
  readonly jobName: string;
  readonly jobStoreId: number;
  /** The days that the item is booked for. */
  readonly from: Day;
  readonly to: Day;
  /** The day at the job's store. */
  readonly today: Day;
  readonly out: boolean;
  readonly itemId: number;
  readonly tag: string;
  readonly kind: string;
  readonly itemStoreId: number;
  readonly refusals: readonly Refusal[];
}

/** The item to take instead. */
export interface Replacement {
  readonly tag: string;
  readonly storeName: string;
}

/** What tells one unfit booking from another. */
export function bookingKey({ jobId, itemId }: { readonly jobId: number; readonly itemId: number }): string {
  return `${jobId}:${itemId}`;
}
