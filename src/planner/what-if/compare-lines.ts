import { Exact } from '../../rules/quantities/exact.js';
import type { DimensionNeed, GearLine, RatingNeed } from '../../rules/lines/need.js';
import type { PlannedLine } from '../job-plan.js';

/** What can differ about a gear line. */
export const LINE_CHANGES = ['comes', 'goes', 'quantity', 'rating', 'sizes', 'shortfall'] as const;
export type LineChange = (typeof LINE_CHANGES)[number];

/** What a line asks for, and how many of it no gear is fit and free for. */
export interface LineStand extends Pick<GearLine, 'kind' | 'duty' | 'quantity' | 'dimensions'> {
  readonly rating?: RatingNeed;
  readonly missing: number;
}

/** A line that a change of the job changes. `before` is absent of one that comes, `after` of one that goes. */
export interface LineDifference {
  readonly key: string;
  readonly label: string;
  readonly changes: readonly LineChange[];
  readonly before?: LineStand;
  readonly after?: LineStand;
}

/**
 * The lines that differ between two plans, in the order of the later plan, then those that go. A line of none asks for
 * nothing and counts as absent; a line that asks for another kind or duty than before is another line.
 */
export function compareLines(
  before: readonly PlannedLine[],
  after: readonly PlannedLine[],
): LineDifference[] {
  const [asked, wanted] = [before.filter(asksForGear), after.filter(asksForGear)];
  const kept = wanted.map(({ line, missing }) => {
    const earlier = asked.find((other) => isSameLine(other.line, line));
    const stand = standOf({ line, missing });
    if (!earlier) return { ...nameOf(line), changes: ['comes'] as const, after: stand };
    const was = standOf(earlier);
    return { ...nameOf(line), changes: changesBetween(was, stand), before: was, after: stand };
  });
  const gone = asked
    .filter(({ line }) => !wanted.some((other) => isSameLine(other.line, line)))
    .map((planned) => ({
      ...nameOf(planned.line),
      changes: ['goes'] as const,
      before: standOf(planned),
    }));
  return [...kept.filter(({ changes }) => changes.length > 0), ...gone];
}

/** Whether two lines are one line before and after a change. */
export function isSameLine(one: LineIdentity, other: LineIdentity): boolean {
  return one.key === other.key && one.kind === other.kind && one.duty === other.duty;
}

type LineIdentity = Pick<GearLine, 'key' | 'kind' | 'duty'>;

function asksForGear({ line: { quantity } }: PlannedLine): boolean {
  return quantity > 0;
}

function nameOf({ key, label }: GearLine): Pick<GearLine, 'key' | 'label'> {
  return { key, label };
}

function standOf({ line, missing }: Pick<PlannedLine, 'line' | 'missing'>): LineStand {
  const { kind, duty, quantity, dimensions, rating } = line;
  return { kind, duty, quantity, dimensions, missing, ...(rating && { rating }) };
}

function changesBetween(before: LineStand, after: LineStand): LineChange[] {
  const differs: readonly (readonly [LineChange, boolean])[] = [
    ['quantity', before.quantity !== after.quantity],
    ['rating', !isSameRating(before.rating, after.rating)],
    ['sizes', !areSameSizes(before.dimensions, after.dimensions)],
    ['shortfall', before.missing !== after.missing],
  ];
  return differs.flatMap(([change, isSo]) => (isSo ? [change] : []));
}

function isSameRating(one: RatingNeed | undefined, other: RatingNeed | undefined): boolean {
  if (!one || !other) return one === other;
  return one.measure === other.measure && one.unit === other.unit && isSameFigure(one.value, other.value);
}

function areSameSizes(some: readonly DimensionNeed[], others: readonly DimensionNeed[]): boolean {
  return (
    some.length === others.length &&
    some.every((one) =>
      others.some(
        (other) =>
          other.dimension === one.dimension &&
          other.rule === one.rule &&
          isSameFigure(other.value, one.value),
      ),
    )
  );
}

function isSameFigure(one: string, other: string): boolean {
  return Exact.of(one).compare(Exact.of(other)) === 0;
}
