import type { UnmetPinReason } from '../../rules/allocation/allocation.js';
import type { Hire, Remedy } from '../../rules/allocation/remedy.js';
import { INSPECTION_NAMES, count, day, needFigure } from './words.js';

/** What would close a gap, as something to do: 'Examine SL-014 by 3 May 2026.' */
export function remedySentence(remedy: Remedy): string {
  const tags = remedy.items.map(({ tag }) => tag).join(', ');
  switch (remedy.kind) {
    case 'liftExclusion':
      return `Take back leaving out ${tags}.`;
    case 'moveFromStore':
      return `Fetch ${tags} from ${remedy.store.name}, by letting this job take from other stores.`;
    case 'examine':
      return `Examine ${remedy.items.map(examined).join(', ')} by ${day(remedy.by)}.`;
    case 'waitForReturn':
      return `Load out on ${day(remedy.loadOutFrom)} or later, when ${tags} ${remedy.items.length === 1 ? 'is' : 'are'} back.`;
    case 'hire':
      return hireSentence(remedy);
  }
}

/** What to hire: 'Hire 2 rated at least 478 kg.' */
export function hireSentence({ covers, rating }: Hire): string {
  return rating
    ? `Hire ${covers} rated at least ${needFigure(rating.value, rating.unit)}.`
    : `Hire ${covers}.`;
}

/** Why a pin was not honoured. */
export function unmetPinSentence(tag: string, reason: UnmetPinReason): string {
  return `${tag} is pinned, but ${UNMET[reason]}`;
}

/** How much is missing on a line: 'Short by 2 items'. */
export function shortSentence(missing: number): string {
  return `Short by ${count(missing, 'item', 'items')}`;
}

const UNMET: Readonly<Record<UnmetPinReason, string>> = {
  unknown_line: 'the job has no such line any more.',
  not_fit_for_line: 'it is not fit for the line. A pin never overrides a refusal.',
  line_full: 'the line is full already.',
  pinned_to_another_line: 'it is pinned to another line as well.',
};

function examined({
  tag,
  types,
}: {
  readonly tag: string;
  readonly types: readonly (keyof typeof INSPECTION_NAMES)[];
}): string {
  return `${tag} (${types.map((type) => INSPECTION_NAMES[type]).join(' and ')})`;
}
