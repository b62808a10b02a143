import type { OpenCommitment } from '../custody/commitments.service.js';
import type { Day } from '../rules/calendar/day.js';
import { currency, dueDates } from '../rules/due/due-date.js';
import type { SchemeDefinition } from '../rules/due/scheme.js';
import type { Gear } from '../rules/gear/gear.js';
import type { StateKind } from '../web/components/state-mark.js';
import { CONDITION_NAMES, day } from '../web/sentences/words.js';

/** How many days before an inspection falls due a peg says so. */
const LEAD_DAYS = 30;

/** One peg of the tally board: an item, and the one thing to know before reaching for it. */
export interface Peg {
  readonly itemId: number;
  readonly tag: string;
  readonly kind: string;
  readonly state: StateKind;
  readonly word: string;
}

/** What to know of an item first: out of service, away, its dates, and only then that it is free. */
export function pegOf(
  gear: Gear,
  open: readonly OpenCommitment[],
  { scheme, today }: { scheme: SchemeDefinition; today: Day },
): Peg {
  const peg = { itemId: gear.itemId, tag: gear.tag, kind: gear.kind };
  if (gear.missing) return { ...peg, state: 'refused', word: 'missing' };
  if (gear.condition !== 'inService')
    return { ...peg, state: 'refused', word: CONDITION_NAMES[gear.condition] };
  const out = open.find((promise) => promise.out);
  if (out)
    return { ...peg, state: 'away', word: out.late ? `late, ${out.jobReference}` : `on ${out.jobReference}` };
  const report = dueDates(gear, scheme, today);
  const dates = datesWord(currency(report, today, LEAD_DAYS), report.dueOn);
  if (dates) return { ...peg, ...dates };
  const next = open[0];
  return { ...peg, state: 'ok', word: next ? `for ${next.jobReference}` : 'free' };
}

function datesWord(
  standing: ReturnType<typeof currency>,
  dueOn: Day | undefined,
): Pick<Peg, 'state' | 'word'> | undefined {
  switch (standing) {
    case 'neverExamined':
      return { state: 'refused', word: 'never examined' };
    case 'outOfDate':
      return { state: 'refused', word: 'out of date' };
    case 'dueSoon':
      return { state: 'due', word: dueOn ? `due ${day(dueOn)}` : 'due soon' };
    case 'inDate':
    case 'notRequired':
      return undefined;
  }
}
