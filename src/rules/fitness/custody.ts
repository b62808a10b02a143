import type { Gear } from '../gear/gear.js';
import type { Window } from '../lines/need.js';
import type { Refusal } from './refusal.js';

/**
 * Whether the item is free and at hand: promised to another job on any day of the window, out past its back day on
 * another job (then no later window can be relied on either), or in a store it may not be drawn from.
 */
export function custodyRefusals(
  gear: Gear,
  window: Window,
  { forJobId, homeStoreOnly }: { forJobId: number | undefined; homeStoreOnly: number | undefined },
): Refusal[] {
  const others = gear.commitments.filter(({ jobId }) => jobId !== forJobId);
  const promised = others.filter(({ from, to }) => from <= window.to && to >= window.from);
  const away = others.filter(({ late }) => late);
  const refusals: Refusal[] = [
    ...promised.map(({ to, jobReference }) => refusal('promised_elsewhere', to, jobReference)),
    ...away.map(({ to, jobReference }) => refusal('not_back_yet', to, jobReference)),
  ];
  if (homeStoreOnly !== undefined && gear.storeId !== homeStoreOnly) {
    refusals.push({ code: 'at_another_store', has: gear.storeName, source: 'common-practice' });
  }
  return refusals;
}

function refusal(
  code: 'promised_elsewhere' | 'not_back_yet',
  on: Gear['commitments'][number]['to'],
  jobReference: string,
): Refusal {
  return { code, on, jobReference, source: 'common-practice' };
}
