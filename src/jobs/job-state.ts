import { isLive, type BookedItem } from '../custody/booked-items.js';
import type { JobEntity } from './job.entity.js';
import type { JobState } from './jobs.dto.js';

/** How far a job's gear has come, from where its booked items are. */
export function jobState(
  { cancelled }: Pick<JobEntity, 'cancelled'>,
  rows: readonly Pick<BookedItem, 'state'>[],
): { readonly state: JobState; readonly booked: number } {
  const booked = rows.filter(isLive).length;
  if (cancelled) return { state: 'cancelled', booked };
  if (rows.some(({ state }) => state === 'out')) return { state: 'out', booked };
  if (booked > 0) return { state: 'reserved', booked };
  return { state: rows.length > 0 ? 'back' : 'planned', booked };
}
