import { dueDates } from '../rules/due/due-date.js';
import { fitness, type FitnessContext, type Verdict } from '../rules/fitness/fitness.js';
import { inOrder, type Refusal } from '../rules/fitness/refusal.js';
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
    if (lines.length === 0) return [];
    const context = contextFor(item, input);
    const verdicts = lines.map((line) => ({ line, verdict: judgeIn(context, item, line, input) }));
    return [{ gear: item, verdicts }];
  });
}

/**
 * Whether one item is fit for one line of the job on its days, with the storeman's exclusion as one more reason.
 * @throws RangeError for an item of a kind that the catalogue does not define.
 */
export function judge(gear: Gear, line: GearLine, input: Omit<JudgeInput, 'lines' | 'held'>): Verdict {
  return judgeIn(contextFor(gear, input), gear, line, input);
}

function judgeIn(
  context: FitnessContext,
  gear: Gear,
  line: GearLine,
  input: Pick<JudgeInput, 'choices'>,
): Verdict {
  const verdict = fitness(gear, line, context);
  if (!input.choices.some(({ choice, itemId }) => choice === 'exclude' && itemId === gear.itemId))
    return verdict;
  const refusals: readonly Refusal[] = [
    ...verdict.refusals,
    { code: 'excluded_by_storeman', source: 'common-practice' },
  ];
  return { ...verdict, fit: false, refusals: inOrder(refusals) };
}

function contextFor(gear: Gear, input: Omit<JudgeInput, 'lines' | 'held'>): FitnessContext {
  const kind = input.kinds.find((known) => known.kind === gear.kind);
  if (!kind)
    throw new RangeError(`'${gear.tag}' is of the kind '${gear.kind}', which the catalogue does not define`);
  const { scheme, window, today, jobId, otherStores, storeId } = input;
  return {
    kind,
    scheme,
    window,
    today,
    forJobId: jobId,
    ...(otherStores ? {} : { homeStoreOnly: storeId }),
    report: dueDates(gear, scheme, today),
  };
}
