import { Problem } from '../problem.js';
import type { Verdict } from '../rules/fitness/fitness.js';
import type { Refusal } from '../rules/fitness/refusal.js';
import type { GearLine } from '../rules/lines/need.js';
import { refusalSentence } from '../web/sentences/refusal.js';
import type { Job } from '../jobs/load-job.js';

/** A booked item whose place the item at hand could take. */
export interface Swap {
  readonly bookedItemId: number;
  readonly tag: string;
  readonly lineKey: string;
  readonly label: string;
}

interface AtCounter {
  readonly job: Pick<Job, 'reference'>;
  readonly item: { readonly tag: string };
}

/** The item may not go out on this line, with every reason. */
export function notFit(
  { item }: AtCounter,
  line: GearLine,
  { refusals }: Pick<Verdict, 'refusals'>,
): Problem {
  const detail = `${item.tag} stays here. For '${line.label}': ${refusals.map(refusalSentence).join(' ')}`;
  return new Problem('item_not_fit', detail, { members: { tag: item.tag, lineKey: line.key, refusals } });
}

/** The item is none of those the job has booked. */
export function notOnBooking({ item, job }: AtCounter, swaps: readonly Swap[]): Problem {
  const lead = `${item.tag} is not on the booking of job ${job.reference}.`;
  const offer =
    swaps.length > 0 ? ` It is fit to take the place of ${swaps.map(({ tag }) => tag).join(' or ')}.` : '';
  return new Problem('not_on_booking', lead + offer, { members: { tag: item.tag, swaps } });
}

/** The swaps that a refused hand-out offers, for the page. */
export function swapsOf({ code, more }: Problem): readonly Swap[] {
  const swaps: unknown = code === 'not_on_booking' ? more.members?.['swaps'] : undefined;
  return Array.isArray(swaps) ? swaps.filter(isSwap) : [];
}

/** The refusals that a refused hand-out gives, for the page. */
export function refusalsOf({ code, more }: Problem): readonly Refusal[] {
  const refusals: unknown = code === 'item_not_fit' ? more.members?.['refusals'] : undefined;
  return Array.isArray(refusals) ? refusals.filter(isRefusal) : [];
}

function isSwap(value: unknown): value is Swap {
  return typeof value === 'object' && value !== null && 'bookedItemId' in value && 'tag' in value;
}

function isRefusal(value: unknown): value is Refusal {
  return typeof value === 'object' && value !== null && 'code' in value && 'source' in value;
}
