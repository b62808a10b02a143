import { In, type EntityManager } from 'typeorm';
import { ToldFlagEntity } from './told-flag.entity.js';
import { bookingKey, type UnfitBooking } from './unfit-booking.js';

/** An unfit booking that is told now. */
export interface NewFlag {
  readonly booking: UnfitBooking;
  /** What makes this telling of it one of a kind: a flag that comes back after it was gone is told again. */
  readonly key: string;
}

/** How what was told differs from how things stand. */
interface FlagChanges {
  /** Never told, or told for other reasons. */
  readonly fresh: readonly { readonly booking: UnfitBooking; readonly told: ToldFlagEntity | undefined }[];
  /** Told, and now with fewer reasons. */
  readonly eased: readonly { readonly booking: UnfitBooking; readonly told: ToldFlagEntity }[];
  /** Told, and fit again or no longer booked. */
  readonly gone: readonly ToldFlagEntity[];
}

/** The unfit bookings that would be told if they were told now. */
export async function untold(
  manager: EntityManager,
  unfit: readonly UnfitBooking[],
): Promise<UnfitBooking[]> {
  return changes(await manager.find(ToldFlagEntity), unfit).fresh.map(({ booking }) => booking);
}

/**
 * Writes down what is told now and forgets what is fit again, in the caller's transaction. Those of `unfit` that are
 * no matter for `isHeard` are neither told nor written down. Gives what is new.
 */
export async function rememberFlags(
  manager: EntityManager,
  unfit: readonly UnfitBooking[],
  { at, isHeard }: { at: string; isHeard: (booking: UnfitBooking) => boolean },
): Promise<NewFlag[]> {
  const { fresh, eased, gone } = changes(await manager.find(ToldFlagEntity), unfit);
  if (gone.length > 0) await manager.delete(ToldFlagEntity, { id: In(gone.map(({ id }) => id)) });
  for (const { booking, told } of eased)
    await manager.update(ToldFlagEntity, { id: told.id }, { codes: codesOf(booking) });
  const flags: NewFlag[] = [];
  for (const { booking, told } of fresh.filter((flag) => isHeard(flag.booking))) {
    const codes = codesOf(booking);
    const id = told?.id ?? (await insertFlag(manager, booking, at));
    if (told) await manager.update(ToldFlagEntity, { id }, { codes, toldAt: at });
    flags.push({ booking, key: `flag ${id} ${told?.toldAt ?? ''} ${codes}` });
  }
  return flags;
}

async function insertFlag(manager: EntityManager, booking: UnfitBooking, at: string): Promise<number> {
  const { jobId, itemId } = booking;
  const row = manager.create(ToldFlagEntity, { jobId, itemId, codes: codesOf(booking), toldAt: at });
  await manager.insert(ToldFlagEntity, row);
  return row.id;
}

function changes(told: readonly ToldFlagEntity[], unfit: readonly UnfitBooking[]): FlagChanges {
  const toldOf = new Map(told.map((row) => [bookingKey(row), row]));
  const unfitOf = new Map(unfit.map((booking) => [bookingKey(booking), booking]));
  const bookings = [...unfitOf].map(([key, booking]) => ({ booking, told: toldOf.get(key) }));
  return {
    fresh: bookings.filter(({ booking, told: row }) => !row || hasMore(booking, row)),
    eased: bookings.flatMap(({ booking, told: row }) =>
      row && !hasMore(booking, row) && row.codes !== codesOf(booking) ? [{ booking, told: row }] : [],
    ),
    gone: told.filter((row) => !unfitOf.has(bookingKey(row))),
  };
}

/** True when it is unfit for a reason that was not told. */
function hasMore({ refusals }: UnfitBooking, { codes }: ToldFlagEntity): boolean {
  const told = codes.split(SEPARATOR);
  return refusals.some(({ code }) => !told.includes(code));
}

function codesOf({ refusals }: UnfitBooking): string {
  return [...new Set(refusals.map(({ code }) => code))].sort().join(SEPARATOR);
}

const SEPARATOR = ',';
