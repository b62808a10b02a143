import type { CheckPoint } from '../../../rules/checks/checklist.js';
import type { Draft } from './draft.js';
import type { BegunCheck } from './store.js';
import { dayOf } from './time.js';

/** A shift. Gear that was looked at longer ago has been used since, and has to be looked at again. */
const LONGEST_SHIFT_MS = 12 * 60 * 60 * 1000;

/** The photos of a begun check that are kept with it, in bytes together: a phone that is nearly full needs its room for what is saved. */
const MOST_PHOTO_BYTES = 2_000_000;

/** Now, and the zone of the site whose day the check counts for. */
export interface Moment {
  readonly now: number;
  readonly timeZone: string;
}

/**
 * True when answers begun at `startedAt` may still become a check: begun in this shift (12 h), and on the same day at
 * the site, for answers of yesterday are no check of today. A start that lies ahead tells of a clock that was moved:
 * then they do not count.
 */
export function stillCounts(startedAt: string, { now, timeZone }: Moment): boolean {
  const age = now - Date.parse(startedAt);
  return age >= 0 && age <= LONGEST_SHIFT_MS && dayOf(startedAt, timeZone) === dayOf(now, timeZone);
}

/** The checklist as it was asked: an answer to other words is no answer. */
export function askedIn(points: readonly CheckPoint[]): string {
  return JSON.stringify(points.map(({ key, look, failsWhen, figures }) => [key, look, failsWhen, figures]));
}

/** A draft without the photos that are too large to be kept with it, and how many those are. */
export function withinRoom(draft: Draft): Pick<BegunCheck, 'draft' | 'photosLeftOut'> {
  let [bytes, photosLeftOut] = [0, 0];
  const kept = Object.entries(draft).map(([key, entered]) => {
    const photos = entered.photos.filter(({ image }) => {
      const fits = bytes + image.size <= MOST_PHOTO_BYTES;
      if (fits) bytes += image.size;
      else photosLeftOut += 1;
      return fits;
    });
    return [key, { ...entered, photos }] as const;
  });
  return { draft: Object.fromEntries(kept), photosLeftOut };
}
