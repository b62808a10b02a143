import type { Pin, UnmetPin } from '../rules/allocation/allocation.js';
import { sortedNaturally } from '../rules/allocation/natural-order.js';
import { remedies } from '../rules/allocation/remedies.js';
import type { LineRemedies } from '../rules/allocation/remedy.js';
import { intervalMonths } from '../rules/due/interval.js';
import type { Verdict } from '../rules/fitness/fitness.js';
import type { RefusalCode } from '../rules/fitness/refusal.js';
import type { Gear } from '../rules/gear/gear.js';
import { allocateLines, type Allocated } from './allocate-lines.js';
import {
  SHOWN_REFUSED,
  type ChosenItem,
  type HeldItem,
  type JobPlan,
  type PlanInput,
  type PlannedLine,
  type RefusedItem,
} from './job-plan.js';
import { judgeGear, type Judged } from './judge-gear.js';

/**
 * Puts the gear that is fit on the lines of a job, and says of all the rest why not. Pure: every fact is in the input.
 * What the job has booked stays on its line while it is fit; then come the pins, then the best choice for the rest.
 */
export function planJob(input: PlanInput): JobPlan {
  const settled = settledItems(input.held);
  const gear = input.gear.filter(({ itemId }) => !settled.has(itemId));
  const judged = judgeGear(gear, input);
  const allocated = allocateLines(input, judged);
  const remediesByLine = remediesOf(input, allocated);
  const asked = askedByLine(judged);
  const lines = input.lines.map((line) => {
    const missing = allocated.shortfalls.find(({ lineKey }) => lineKey === line.key)?.missing ?? 0;
    const cure = remediesByLine.get(line.key);
    return {
      ...planLine(line, input, { asked: asked.get(line.key) ?? [], allocated }),
      missing,
      ...(cure && { remedies: cure }),
    };
  });
  const tags = new Map(input.gear.map(({ itemId, tag }) => [itemId, tag]));
  return {
    lines,
    unmetPins: allocated.unmetPins.map((pin) => withTag(pin, tags)),
    transports: transportsOf(input, lines),
  };
}

/** The items that were asked for each line, with the answers. */
type AskedByLine = ReadonlyMap<string, readonly Asked[]>;

interface Asked {
  readonly gear: Gear;
  readonly verdict: Verdict;
}

function askedByLine(judged: readonly Judged[]): AskedByLine {
  const byLine = new Map<string, Asked[]>();
  for (const { gear, verdicts } of judged) {
    for (const { line, verdict } of verdicts) {
      const asked = byLine.get(line.key);
      if (asked) asked.push({ gear, verdict });
      else byLine.set(line.key, [{ gear, verdict }]);
    }
  }
  return byLine;
}

function planLine(
  line: PlannedLine['line'],
  input: PlanInput,
  { asked, allocated: { chosen, served } }: { asked: readonly Asked[]; allocated: Allocated },
): Omit<PlannedLine, 'missing'> {
  const onLine = new Set(chosen.filter(({ lineKey }) => lineKey === line.key).map(({ itemId }) => itemId));
  const taken = asked.filter(({ gear }) => onLine.has(gear.itemId));
  const refused = asked.filter(({ verdict }) => !verdict.fit);
  return {
    line,
    served: served.get(line.key) ?? 0,
    chosen: sortedNaturally(taken, tagOf).map((item) => chosenItem(item, line, input)),
    refused: sortedNaturally(refused, tagOf).slice(0, SHOWN_REFUSED).map(refusedItem),
    refusedCount: refused.length,
    reasons: reasonsOf(refused),
  };
}

function tagOf({ gear }: Asked): string {
  return gear.tag;
}

function refusedItem({ gear: { itemId, tag, storeName }, verdict: { refusals } }: Asked): RefusedItem {
  return { itemId, tag, storeName, refusals };
}

function reasonsOf(refused: readonly Asked[]): PlannedLine['reasons'] {
  const counts = new Map<RefusalCode, number>();
  for (const { verdict } of refused) {
    for (const code of new Set(verdict.refusals.map((refusal) => refusal.code)))
      counts.set(code, (counts.get(code) ?? 0) + 1);
  }
  return [...counts].map(([code, count]) => ({ code, count })).sort((a, b) => b.count - a.count);
}

function chosenItem(
  { gear: { itemId, tag, storeId, storeName }, verdict }: Asked,
  line: PlannedLine['line'],
  input: PlanInput,
): ChosenItem {
  const on = { itemId, lineKey: line.key };
  return {
    itemId,
    tag,
    storeId,
    storeName,
    held: isOneOf(input.held, on),
    pinned: input.choices.some(({ choice, ...pin }) => choice === 'pin' && isOneOf([on], pin)),
    ...(verdict.ratingRatio && { ratingRatio: verdict.ratingRatio.toString() }),
    ...(verdict.dueOn && { dueOn: verdict.dueOn }),
    cautions: verdict.cautions,
    workings: verdict.workings,
  };
}

function remediesOf(
  input: PlanInput,
  { judged, shortfalls: allShort, chosen }: Allocated,
): ReadonlyMap<string, LineRemedies> {
  // A need that is not settled is closed by settling it: what to hire or to examine cannot be said before.
  const unsettled = new Set(input.lines.filter((line) => line.unsettled).map(({ key }) => key));
  const shortfalls = allShort.filter(({ lineKey }) => !unsettled.has(lineKey));
  if (shortfalls.length === 0) return new Map();
  const short = new Set(shortfalls.map(({ lineKey }) => lineKey));
  const refused = judged.flatMap(({ gear, verdicts }) => {
    const lines = verdicts
      .filter(({ line, verdict }) => short.has(line.key) && !verdict.fit)
      .map(({ line, verdict }) => ({ lineKey: line.key, refusals: verdict.refusals }));
    if (lines.length === 0) return [];
    const { itemId, tag, storeId, storeName } = gear;
    const lasts = intervalMonths(gear, input.scheme, input.today);
    return [{ itemId, tag, storeId, storeName, lines, intervalMonths: lasts }];
  });
  const { lines, window, today } = input;
  const answers = remedies({ lines, shortfalls, refused, chosen, window, today });
  return new Map(answers.map((answer) => [answer.lineKey, answer]));
}

function transportsOf({ storeId }: PlanInput, lines: readonly PlannedLine[]): JobPlan['transports'] {
  const stores = new Map<number, { storeId: number; storeName: string; tags: string[] }>();
  for (const item of lines.flatMap(({ chosen }) => chosen)) {
    const store = stores.get(item.storeId) ?? { storeId: item.storeId, storeName: item.storeName, tags: [] };
    store.tags.push(item.tag);
    stores.set(item.storeId, store);
  }
  const byName = sortedNaturally([...stores.values()], ({ storeName }) => storeName);
  return [
    ...byName.filter((store) => store.storeId === storeId),
    ...byName.filter((store) => store.storeId !== storeId),
  ];
}

/** Items that are through with this job: they are handed out again, not planned again. */
function settledItems(held: readonly HeldItem[]): ReadonlySet<number> {
  const live = new Set(
    held.filter(({ state }) => state === 'reserved' || state === 'out').map(({ itemId }) => itemId),
  );
  return new Set(held.map(({ itemId }) => itemId).filter((itemId) => !live.has(itemId)));
}

function isOneOf(
  pins: readonly Pin[],
  { itemId, lineKey }: { itemId: number; lineKey?: string | undefined },
): boolean {
  return pins.some((pin) => pin.itemId === itemId && pin.lineKey === lineKey);
}

function withTag(pin: UnmetPin, tags: ReadonlyMap<number, string>): JobPlan['unmetPins'][number] {
  const tag = tags.get(pin.itemId);
  return tag === undefined ? pin : { ...pin, tag };
}
