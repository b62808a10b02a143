import type { CheckProblem } from './check-problem.js';
import type { CheckPoint, Criterion, LimitCriterion, ShareCriterion } from './checklist.js';
import { isDoubtful, judgeLimit, judgeShare, type CriterionVerdict } from './judge-criterion.js';
import type { ReadFigure } from './read-figure.js';

type Figures = ReadonlyMap<string, ReadFigure>;

/** What the criteria of one point say of what was measured, or why they can say nothing. */
export interface FigureVerdicts {
  readonly verdicts: readonly CriterionVerdict[];
  readonly problems: readonly CheckProblem[];
}

/** A criterion with the figures that it needs, all of them entered. */
type Held =
  | { readonly criterion: LimitCriterion; readonly part: ReadFigure }
  | { readonly criterion: ShareCriterion; readonly part: ReadFigure; readonly whole: ReadFigure };

/** Judges the figures of one point by every criterion whose figures were entered. */
export function judgeFigures(point: CheckPoint, figures: Figures): FigureVerdicts {
  const partners = missingPartners(point, figures);
  if (partners.length > 0) return { verdicts: [], problems: told('partner_missing', point, partners) };
  const held = point.criteria.flatMap((criterion) => heldBy(criterion, figures));
  const noughts = held.flatMap((each) =>
    'whole' in each && each.whole.value.isZero() ? [each.criterion.whole] : [],
  );
  if (noughts.length > 0) return { verdicts: [], problems: told('figure_zero', point, noughts) };
  const verdicts = held.map((each) =>
    'whole' in each
      ? judgeShare(each.criterion, each.part, each.whole)
      : judgeLimit(each.criterion, each.part),
  );
  // A doubt matters only where it would pass the point: failing figures fail, however far they are apart.
  const passes = verdicts.every(({ failed }) => !failed);
  const doubts = passes
    ? held.filter((each) => 'whole' in each && isDoubtful(each.criterion, each.part, each.whole))
    : [];
  return {
    verdicts,
    problems: told(
      'figures_doubtful',
      point,
      doubts.map(({ criterion }) => criterion.part),
    ),
  };
}

/** One problem for each figure, however many criteria it is in. */
function told(code: CheckProblem['code'], point: CheckPoint, figures: readonly string[]): CheckProblem[] {
  return [...new Set(figures)].map((figure) => ({ code, point: point.key, figure }));
}

/** For each figure that no criterion can use as it stands: the one it is held against, or that is held against it. */
function missingPartners({ criteria }: CheckPoint, figures: Figures): string[] {
  return [...figures.keys()].flatMap((name) => {
    const uses = criteria.filter(({ part, whole }) => part === name || whole === name);
    const [first] = uses;
    if (first?.whole === undefined || uses.some((criterion) => heldBy(criterion, figures).length > 0))
      return [];
    return [first.part === name ? first.whole : first.part];
  });
}

/** The criterion with its figures, where they were all entered. */
function heldBy(criterion: Criterion, figures: Figures): Held[] {
  const part = figures.get(criterion.part);
  if (part === undefined) return [];
  if (criterion.whole === undefined) return [{ criterion, part }];
  const whole = figures.get(criterion.whole);
  return whole === undefined ? [] : [{ criterion, part, whole }];
}
