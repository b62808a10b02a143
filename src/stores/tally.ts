import type { OpenCommitment } from '../custody/commitments.service.js';
import { addDays, type Day } from '../rules/calendar/day.js';
import type { SchemeDefinition } from '../rules/due/scheme.js';
import { fitness, type Verdict } from '../rules/fitness/fitness.js';
import type { Gear } from '../rules/gear/gear.js';
import type { KindDefinition } from '../rules/gear/kind.js';
import type { GearLine } from '../rules/lines/need.js';
import type { StateKind } from '../web/components/state-mark.js';
import { REFUSAL_WORDS } from '../web/sentences/refusal-word.js';
import { shortDay } from '../web/sentences/words.js';

/** How many days before an inspection falls due a peg says so. */
export const LEAD_DAYS = 30;

/** One peg of the tally board: an item, and the one thing to know before reaching for it. */
export interface Peg {
  readonly itemId: number;
  readonly tag: string;
  readonly kind: string;
  readonly state: StateKind;
  readonly word: string;
}

/** What a peg is judged by. */
export interface PegContext {
  readonly kind: KindDefinition;
  readonly scheme: SchemeDefinition;
  readonly today: Day;
}

/** What to know of an item first: that it is away, that it may not be used, that its dates run out, or who it is for. */
export function pegOf(gear: Gear, open: readonly OpenCommitment[], context: PegContext): Peg {
  const peg = { itemId: gear.itemId, tag: gear.tag, kind: gear.kind };
  const out = open.find((promise) => promise.out);
  if (out && !gear.missing)
    return { ...peg, state: 'away', word: `${out.late ? 'late,' : 'on'} ${out.jobReference}` };
  const { refusals, dueOn } = fitToday(gear, context);
  const [first] = refusals;
  if (first) return { ...peg, state: 'refused', word: REFUSAL_WORDS[first.code] };
  if (dueOn !== undefined && dueOn <= addDays(context.today, LEAD_DAYS)) {
    return { ...peg, state: 'due', word: `due ${shortDay(dueOn)}` };
  }
  const [next] = open;
  return { ...peg, state: 'ok', word: next ? `for ${next.jobReference}` : 'free' };
}

/** The one question, asked for today and for no job in particular: its own kind and duty, no size, no rating to reach. */
function fitToday(gear: Gear, { kind, scheme, today }: PegContext): Verdict {
  const line: GearLine = {
    key: 'anyUse',
    label: kind.name,
    kind: kind.kind,
    duty: kind.duties[0] ?? 'carrying',
    quantity: 1,
    dimensions: [],
    workings: [],
  };
  return fitness({ ...gear, commitments: [] }, line, {
    kind,
    scheme,
    window: { from: today, to: today },
    today,
  });
}
