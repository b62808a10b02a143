/** Where one is on the phone page; kept in the address after `#`, so that going back works. */
export type Place =
  | { readonly at: 'jobs' }
  | { readonly at: 'job'; readonly jobId: number }
  | { readonly at: 'item'; readonly jobId: number; readonly itemId: number }
  | { readonly at: 'waiting' };

/** The place that an address means; the list of jobs when it means none. */
export function placeOf(hash: string): Place {
  if (hash === '#/waiting') return { at: 'waiting' };
  const [, jobId, itemId] = /^#\/jobs\/(\d+)(?:\/items\/(\d+))?$/.exec(hash) ?? [];
  if (!jobId) return { at: 'jobs' };
  return itemId
    ? { at: 'item', jobId: Number(jobId), itemId: Number(itemId) }
    : { at: 'job', jobId: Number(jobId) };
}

/** The address of a place. */
export function addressOf(place: Place): string {
  if (place.at === 'waiting') return '#/waiting';
  if (place.at === 'job') return `#/jobs/${place.jobId}`;
  if (place.at === 'item') return `#/jobs/${place.jobId}/items/${place.itemId}`;
  return '#/';
}
