import { cureOf } from './cure.js';
import { noteOnce } from './given-once.js';
import { sortedNaturally } from './natural-order.js';
import { OWN_GEAR_BY_EFFORT } from './own-gear.js';
import type { Hire, LineRemedies, RefusedCandidate, RemediedLine, Remedy, RemedyInput } from './remedy.js';

/**
 * What would close the gap of each short line, least effort first: lift an exclusion, move from another store, examine,
 * wait for a return, hire. A list stops when the gap is closed, and hiring closes what own gear leaves open. Only items
 * that one kind of remedy makes fit are offered (`cureOf` says which), and an item is offered for one line only: lines
 * earlier in the order have the first claim. The order of the refused items does not matter.
 * @throws RangeError for an item, tag, line or short line given twice, a shortfall of no line, or a missing quantity
 * that is not a whole number from 0.
 */
export function remedies(input: RemedyInput): readonly LineRemedies[] {
  const missing = missingByLine(input);
  const refused = inTagOrder(input.refused);
  const claimed = new Set(input.chosen.map(({ itemId }) => itemId));
  const answers: LineRemedies[] = [];
  for (const line of input.lines) {
    const units = missing.get(line.key) ?? 0;
    if (units === 0) continue;
    const free = refused.filter(({ itemId }) => !claimed.has(itemId));
    const answer = remedyLine(line, units, free, input);
    for (const { items } of answer.remedies) for (const { itemId } of items) claimed.add(itemId);
    answers.push(answer);
  }
  return answers;
}

function remedyLine(
  line: RemediedLine,
  missing: number,
  free: readonly RefusedCandidate[],
  days: RemedyInput,
): LineRemedies {
  const cures = free.flatMap((candidate) => {
    const refusals = candidate.lines.find(({ lineKey }) => lineKey === line.key)?.refusals ?? [];
    return cureOf(candidate, refusals, days) ?? [];
  });
  const own: Remedy[] = [];
  let open = missing;
  for (const remediesOf of OWN_GEAR_BY_EFFORT) {
    const found = remediesOf({ lineKey: line.key, open, cures, days });
    open = found.reduce((left, { covers }) => left - covers, open);
    own.push(...found);
  }
  if (open === 0) return { lineKey: line.key, missing, remedies: own };
  const answer = { lineKey: line.key, missing, remedies: [...own, hire(line, open)] };
  return own.length === 0 ? answer : { ...answer, wholeHire: hire(line, missing) };
}

function hire({ key, rating }: RemediedLine, covers: number): Hire {
  return { kind: 'hire', lineKey: key, items: [], covers, ...(rating && { rating }) };
}

function inTagOrder(refused: readonly RefusedCandidate[]): readonly RefusedCandidate[] {
  const itemIds = new Set<number>();
  const tags = new Set<string>();
  for (const { itemId, tag } of refused) {
    noteOnce(itemIds, itemId, 'item');
    noteOnce(tags, tag, 'tag');
  }
  return sortedNaturally(refused, ({ tag }) => tag);
}

function missingByLine({ lines, shortfalls }: RemedyInput): ReadonlyMap<string, number> {
  const lineKeys = new Set<string>();
  for (const { key } of lines) noteOnce(lineKeys, key, 'line');
  const missing = new Map<string, number>();
  const short = new Set<string>();
  for (const shortfall of shortfalls) {
    noteOnce(short, shortfall.lineKey, 'shortfall of');
    if (!lineKeys.has(shortfall.lineKey))
      throw new RangeError(`'${shortfall.lineKey}' is short, but no line`);
    if (!Number.isSafeInteger(shortfall.missing) || shortfall.missing < 0) {
      throw new RangeError(`${shortfall.missing} units missing is not a whole number from 0`);
    }
    missing.set(shortfall.lineKey, shortfall.missing);
  }
  return missing;
}
