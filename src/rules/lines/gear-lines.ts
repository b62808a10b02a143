import { checkStated, jobParameters } from '../calculations/job-parameters.js';
import { liftCalculation, type Lift } from '../calculations/lift.js';
import type { StatedParameter } from '../calculations/parameter.js';
import type { KindDefinition } from '../gear/kind.js';
import { checkSchedule, type ScheduleProblem } from '../panels/check-schedule.js';
import type { PanelLine } from '../panels/panel-line.js';
import { liftedPanels } from '../panels/lifted-panel.js';
import { rulingPanels, type RulingPanels } from '../panels/panel-mass.js';
import { checkChanges, type Changes } from './check-changes.js';
import { checkCounts, countedFor, type JobCounts } from './job-counts.js';
import { addedLine, adjustedLine } from './line-change.js';
import { Exact } from '../quantities/exact.js';
import type { LineProblem } from './line-problem.js';
import type { MethodLine } from './method.js';
import { dimensionsOf, quantityOf, ratingOf, unsettledIn, type JobFigures } from './method-needs.js';
import type { GearLine } from './need.js';

/** A job as the arithmetic sees it, with what its planner changed. `kinds` are all kinds of the catalogue. */
export interface GearLinesInput extends Changes {
  readonly panels: readonly PanelLine[];
  readonly counts: JobCounts;
  /** Figures of the method that the job states for itself. */
  readonly stated: readonly StatedParameter[];
}

/** The gear lines of a job in the method's order, added ones last; or every problem that stands in their way. */
export type GearLinesResult =
  | {
      readonly ok: true;
      readonly lines: readonly GearLine[];
      readonly ruling: RulingPanels;
      readonly lift: Lift;
    }
  | { readonly ok: false; readonly problems: readonly (ScheduleProblem | LineProblem)[] };

/**
 * Turns a panel schedule and a method into gear lines: how many of what, rated and sized how, each with its working.
 * The masses of the ruling panels are worked out once, in `ruling.workings`.
 * @throws RangeError when the method names a kind that is not among `kinds`, which a checked catalogue rules out.
 */
export function gearLines(input: GearLinesInput): GearLinesResult {
  const faults = [
    ...checkSchedule(input.panels),
    ...checkCounts(input.counts),
    ...checkStated(input.method, input.stated),
  ];
  if (faults.length > 0) return { ok: false, problems: [...faults, ...checkChanges(input, [])] };
  const { method, kinds, panels, counts } = input;
  const ruling = rulingPanels(panels, method.estimateMargin);
  const parameters = jobParameters(method, input.stated);
  const lift = liftCalculation({
    panels: liftedPanels(panels, method.estimateMargin),
    parameters,
    calculations: method.calculations,
  });
  const figures: JobFigures = { ruling, lift, parameters, counted: countedFor(counts, method) };
  const fromMethod = method.lines.map((line) => methodLine(line, kindOf(kinds, line.kind), figures));
  const problems = checkChanges(input, fromMethod);
  if (problems.length > 0) return { ok: false, problems };
  const lines = fromMethod.map((line) => {
    const adjustment = input.adjustments.find(({ lineKey }) => lineKey === line.key);
    return adjustment ? adjustedLine(line, adjustment, kindOf(kinds, line.kind)) : line;
  });
  return {
    ok: true,
    lines: [...lines, ...input.added.map((line) => addedLine(line, kindOf(kinds, line.kind)))],
    ruling,
    lift,
  };
}

function methodLine(line: MethodLine, kind: KindDefinition, figures: JobFigures): GearLine {
  const { quantity, working } = quantityOf(line, figures.counted);
  const needed = ratingOf(line, kind, figures);
  // What would carry nothing is not needed: no platform where nobody goes aloft.
  const unsettled = unsettledIn(line, figures);
  const idle = needed !== undefined && Exact.of(needed.rating.value).isZero();
  return {
    key: line.key,
    label: line.label,
    kind: line.kind,
    duty: line.duty,
    quantity: idle ? 0 : quantity,
    ...(needed && !idle && { rating: needed.rating }),
    dimensions: dimensionsOf(line, figures),
    ...(line.hosting && figures.lift.hosting && { hosting: figures.lift.hosting }),
    workings: [working, ...(needed?.workings ?? [])],
    ...(unsettled.length > 0 && !idle && { unsettled }),
  };
}

function kindOf(kinds: readonly KindDefinition[], name: string): KindDefinition {
  const kind = kinds.find((known) => known.kind === name);
  if (!kind) throw new RangeError(`the method names the kind '${name}', which is not in the catalogue`);
  return kind;
}
