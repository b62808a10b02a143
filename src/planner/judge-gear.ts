import { fitness, type FitnessContext, type Verdict } from '../rules/fitness/fitness.js';
import { REFUSAL_CODES, type Refusal } from '../rules/fitness/refusal.js';
import type { Gear } from '../rules/gear/gear.js';
import type { GearLine } from '../rules/lines/need.js';
import type { PlanInput } from './job-plan.js';

/** An item with the answer for each line that it was asked for. */
export interface Judged {
  readonly gear: Gear;
  readonly verdicts: readonly { readonly line: GearLine; readonly verdict: Verdict }[];
}

/** What the answer for one item depends on besides the item. */
export type JudgeInput = Pick<
  PlanInput,
  'jobId' | 'storeId' | 'window' | 'otherStores' | 'lines' | 'held' | 'choices' | 'kinds' | 'scheme' | 'today'
>;

/** Asks of each item whether it is fit for each line of its kind. An item that is out on the job is asked for its own line only. */
export function judgeGear(gear: readonly Gear[], input: JudgeInput): Judged[] {
  const linesOfKind = new Map<string, GearLine[]>();
  for (const line of input.lines) linesOfKind.set(line.kind, [...(linesOfKind.get(line.kind) ?? []), line]);
  const outOn = new Map(
    input.held.filter(({ state }) => state === 'out').map(({ itemId, lineKey }) => [itemId, lineKey]),
  );
  return gear.flatMap((item) => {
    const lineOut = outOn.get(item.itemId);
    const lines = (linesOfKind.get(item.kind) ?? []).filter(
      ({ key }) => lineOut === undefined || key === lineOut,
    );
    const verdicts = lines.map((line) => ({ line, verdict: judge(item, line, input) }));
    return verdicts.length === 0 ? [] : [{ gear: item, verdicts }];
  });
}

/**
 * Whether one item is fit for one line of the job on its days, with the storeman's exclusion as one more reason.
 * @throws RangeError for an item of a kind that the catalogue does not define.
 */
export function judge(gear: Gear, line: GearLine, input: Omit<JudgeInput, 'lines' | 'held'>): Verdict {
  const verdict = fitness(gear, line, contextFor(gear, input));
  if (!input.choices.some(({ choice, itemId }) => choice === 'exclude' && itemId === gear.itemId))
    return verdict;
  const refusals: Refusal[] = [
    ...verdict.refusals,
    { code: 'excluded_by_storeman', source: 'common-practice' },
  ];
  return { ...verdict, fit: false, refusals: refusals.sort((a, b) => orderOf(a) - orderOf(b)) };
}

function contextFor(gear: Gear, input: Omit<JudgeInput, 'lines' | 'held'>): FitnessContext {
  const kind = input.kinds.find((known) => known.kind === gear.kind);
  if (!kind)
    throw new RangeError(`'${gear.tag}' is of the kind '${gear.kind}', which the catalogue does not define`);
  const { scheme, window, today, jobId, otherStores, storeId } = input;
  return { kind, scheme, window, today, forJobId: jobId, ...(otherStores ? {} : { homeStoreOnly: storeId }) };
}

function orderOf({ code }: Refusal): number {
  return REFUSAL_CODES.indexOf(code);
}
