import type { Day } from '../rules/calendar/day.js';
import { day as dayText } from '../web/sentences/words.js';
import type { CoveredItemView } from './coverage.dto.js';

/** `9 of 12 ratchet straps checked today; failed: RS-4; unchecked: RS-7, RS-9`. */
export function coverageSentence(
  items: readonly Pick<CoveredItemView, 'tag' | 'state' | 'clockDoubtful'>[],
  { plural, day, today }: { plural: string; day: Day; today: Day },
): string {
  const tagged = (state: CoveredItemView['state']) =>
    items.filter((item) => item.state === state).map(({ tag }) => tag);
  const when = day === today ? 'today' : `on ${dayText(day)}`;
  const doubtful = items.filter((item) => item.state === 'unchecked' && item.clockDoubtful === true);
  return [
    `${tagged('checked').length} of ${items.length} ${plural.toLowerCase()} checked ${when}`,
    ...named('failed', tagged('failed')),
    ...named('unchecked', tagged('unchecked')),
    ...named(
      'checked by a clock in doubt, which does not count',
      doubtful.map(({ tag }) => tag),
    ),
  ].join('; ');
}

function named(what: string, tags: readonly string[]): string[] {
  return tags.length === 0 ? [] : [`${what}: ${tags.join(', ')}`];
}
