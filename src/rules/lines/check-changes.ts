import type { KindDefinition } from '../gear/kind.js';
import { Exact } from '../quantities/exact.js';
import { hitchNeed, type Hitch } from '../rigging/hitch.js';
import type { LineProblem } from './line-problem.js';
import {
  readWantedRating,
  WANTED_FIGURE,
  type AddedLine,
  type LineAdjustment,
  type WantedDimension,
  type WantedRating,
} from './line-change.js';
import type { MethodDefinition } from './method.js';
import type { GearLine } from './need.js';

/** What a person changes, and what it is changed against. */
export interface Changes {
  readonly method: MethodDefinition;
  readonly kinds: readonly KindDefinition[];
  readonly adjustments: readonly LineAdjustment[];
  readonly added: readonly AddedLine[];
}

/** What one change says, and the line of the method that it may not go below. */
interface Change {
  readonly subject: string;
  readonly kind: KindDefinition;
  readonly rating: WantedRating | undefined;
  readonly dimensions: readonly WantedDimension[];
  readonly line?: GearLine | undefined;
}

const MOST_ITEMS = 10_000;

/**
 * Every problem of the changes. Needs may go above the method's and never below: a lighter need comes from the panel
 * schedule, not from a wish. Where `lines` could not be worked out, that comparison alone is left out.
 */
export function checkChanges(changes: Changes, lines: readonly GearLine[]): readonly LineProblem[] {
  return [
    ...changes.adjustments.flatMap((adjustment, index) => checkAdjustment(changes, adjustment, index, lines)),
    ...changes.added.flatMap((added, index) => checkAdded(changes, added, index)),
  ];
}

function checkAdjustment(
  { method, kinds, adjustments }: Changes,
  adjustment: LineAdjustment,
  index: number,
  lines: readonly GearLine[],
): LineProblem[] {
  const { lineKey: subject, reason, quantity, rating, dimensions = [] } = adjustment;
  const methodLine = method.lines.find(({ key }) => key === subject);
  const kind = kinds.find((known) => known.kind === methodLine?.kind);
  if (!kind) return [{ code: 'unknown_line', subject }];
  const problems = checkReasonAndQuantity(subject, reason, quantity);
  if (adjustments.findIndex(({ lineKey }) => lineKey === subject) < index) {
    problems.push({ code: 'line_adjusted_twice', subject });
  }
  const line = lines.find(({ key }) => key === subject);
  return [...problems, ...checkNeeds({ subject, kind, rating, dimensions, line })];
}

function checkAdded({ method, kinds, added }: Changes, line: AddedLine, index: number): LineProblem[] {
  const { key: subject, reason, quantity, rating, dimensions = [], duty } = line;
  const problems = checkReasonAndQuantity(subject, reason, quantity);
  const taken = [...method.lines, ...added.slice(0, index)].some(({ key }) => key === subject);
  if (taken) problems.push({ code: 'key_taken', subject });
  const kind = kinds.find((known) => known.kind === line.kind);
  if (!kind) return [...problems, { code: 'unknown_kind', subject }];
  if (!kind.duties.includes(duty)) problems.push({ code: 'duty_not_of_kind', subject });
  if (kind.rating && !rating) problems.push({ code: 'rating_missing', subject });
  if (line.hitch) problems.push(...checkHitch(line, kind, line.hitch));
  return [...problems, ...checkNeeds({ subject, kind, rating, dimensions })];
}

/** A line of no slings is a dropped one; any other has the slings for one hitch at least. */
function checkHitch(
  { key: subject, quantity }: AddedLine,
  kind: KindDefinition,
  hitch: Hitch,
): LineProblem[] {
  if (!kind.hitches) return [{ code: 'hitch_not_of_kind', subject }];
  const need = hitchNeed(Exact.of('1'), hitch, kind.hitches);
  if (!need.ok) return [{ code: need.code, subject }];
  if (quantity === 0 || quantity >= need.slings) return [];
  return [{ code: 'hitch_too_few_slings', subject, least: String(need.slings) }];
}

function checkReasonAndQuantity(
  subject: string,
  reason: string,
  quantity: number | undefined,
): LineProblem[] {
  const problems: LineProblem[] = [];
  if (reason.trim() === '') problems.push({ code: 'reason_missing', subject });
  if (quantity !== undefined && !(Number.isInteger(quantity) && quantity >= 0 && quantity <= MOST_ITEMS)) {
    problems.push({ code: 'quantity_out_of_range', subject });
  }
  return problems;
}

function checkNeeds(change: Change): LineProblem[] {
  const rating = change.rating ? checkRating(change, change.rating) : [];
  return [...rating, ...change.dimensions.flatMap((wanted) => checkDimension(change, wanted))];
}

function checkRating({ subject, kind, line }: Change, wanted: WantedRating): LineProblem[] {
  if (!kind.rating) return [{ code: 'rating_not_of_kind', subject }];
  const need = readWantedRating(wanted, kind.rating.measure);
  if (!need) return [{ code: 'rating_unreadable', subject }];
  const least = line?.rating;
  if (!least || !Exact.of(need.value).isLessThan(Exact.of(least.value))) return [];
  return [{ code: 'rating_below_method', subject, least: least.value, unit: least.unit }];
}

function checkDimension(
  { subject, kind, line }: Change,
  { dimension, value }: WantedDimension,
): LineProblem[] {
  if (!kind.dimensions.some(({ name }) => name === dimension))
    return [{ code: 'unknown_dimension', subject, dimension }];
  if (!WANTED_FIGURE.test(value) || Exact.of(value).isZero())
    return [{ code: 'dimension_unreadable', subject, dimension }];
  const least = line?.dimensions.find((need) => need.dimension === dimension && need.rule === 'atLeast');
  if (!least || !Exact.of(value).isLessThan(Exact.of(least.value))) return [];
  return [{ code: 'dimension_below_method', subject, dimension, least: least.value }];
}
