import type { LineRemedies, RefusedCandidate, RemedyInput } from '../../src/rules/allocation/remedy.js';
import { toDay } from '../../src/rules/calendar/day.js';
import type { Refusal, RefusalCode } from '../../src/rules/fitness/refusal.js';
import type { RatingNeed } from '../../src/rules/lines/need.js';

export const needA: RatingNeed = { measure: 'workingLoadLimit', value: '1000', unit: 'kg' };
const yard = { storeId: 1, storeName: 'Yard' };

/** A refusal by its code, on a day or for a subject where given. */
export function refusal(code: RefusalCode, facts: { on?: string; subject?: string } = {}): Refusal {
  const { on, subject } = facts;
  return { code, source: 'common-practice', ...(subject && { subject }), ...(on && { on: toDay(on) }) };
}

/** An item `SL-1` and so on of the yard, refused on line A. */
export function refused(
  itemId: number,
  refusals: readonly Refusal[],
  facts: Partial<RefusedCandidate> = {},
): RefusedCandidate {
  return { itemId, tag: `SL-${itemId}`, ...yard, lines: [{ lineKey: 'A', refusals }], ...facts };
}

/** Line A, rated at least 1000 kg, short by so many; away 10 to 20 June 2026, planned on 1 June. */
export function shortBy(
  missing: number,
  items: readonly RefusedCandidate[],
  facts: Partial<RemedyInput> = {},
): RemedyInput {
  return {
    lines: [{ key: 'A', rating: needA }],
    shortfalls: [{ lineKey: 'A', missing }],
    refused: items,
    chosen: [],
    window: { from: toDay('2026-06-10'), to: toDay('2026-06-20') },
    today: toDay('2026-06-01'),
    ...facts,
  };
}

/** The answer in short: `kind:tag,tag` for each remedy of each line. */
export function inShort(answers: readonly LineRemedies[]): readonly string[] {
  return answers.flatMap(({ remedies: found }) =>
    found.map(({ kind, items, covers }) => `${kind}:${items.map(({ tag }) => tag).join(',') || covers}`),
  );
}
