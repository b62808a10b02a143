import type { Working } from '../working.js';
import type { CheckProblem } from './check-problem.js';
import type { CheckAnswer, CheckPoint } from './checklist.js';
import { judgeFigures } from './judge-figures.js';
import { readFigures } from './read-figures.js';

/** What came of one point of a checklist. */
export interface Finding {
  /** Key of the point. */
  readonly point: string;
  readonly severity: CheckPoint['severity'];
  readonly failed: boolean;
  /** One for each criterion whose figures were entered, in the order of the checklist. */
  readonly workings: readonly Working[];
  readonly remarks?: string;
}

/** What a whole check says: its findings in the order of the checklist, or why it cannot be judged. */
export type CheckJudgement =
  | { readonly problems: readonly CheckProblem[] }
  | { readonly outcome: 'fit' | 'unfit'; readonly findings: readonly Finding[] };

/**
 * Judges the answers to a checklist. Every point is answered once, and a point fails where it was answered bad or
 * where a figure entered to it fails its criterion, whatever the answer; nothing measured turns a bad answer to good.
 * One failed point makes the item unfit. Figures are optional, but one that is held against another never stands
 * alone, and none is passed over: where anything cannot be read or judged there is no outcome but the problems.
 */
export function judgeCheck(points: readonly CheckPoint[], answers: readonly CheckAnswer[]): CheckJudgement {
  const judged = points.flatMap((point) => {
    const answer = answers.find((given) => given.point === point.key);
    return answer === undefined ? [] : [judgePoint(point, answer)];
  });
  const problems = [...answerProblems(points, answers), ...judged.flatMap((point) => point.problems)];
  if (problems.length > 0) return { problems };
  const findings = judged.map(({ finding }) => finding);
  return { outcome: findings.some(({ failed }) => failed) ? 'unfit' : 'fit', findings };
}

/** Points without an answer and answers without a point; a checklist without points says nothing of an item. */
function answerProblems(points: readonly CheckPoint[], answers: readonly CheckAnswer[]): CheckProblem[] {
  if (points.length === 0) return [{ code: 'checklist_empty' }];
  const given = answers.map(({ point }) => point);
  const known = new Set(points.map(({ key }) => key));
  const unanswered = [...known].filter((key) => !given.includes(key));
  const twice = new Set(given.filter((key, index) => known.has(key) && given.indexOf(key) !== index));
  const strays = new Set(given.filter((key) => !known.has(key)));
  return [
    ...[...unanswered].map((point) => ({ code: 'point_unanswered', point }) as const),
    ...[...twice].map((point) => ({ code: 'answered_twice', point }) as const),
    ...[...strays].map((point) => ({ code: 'unknown_point', point }) as const),
  ];
}

function judgePoint(
  point: CheckPoint,
  answer: CheckAnswer,
): { finding: Finding; problems: readonly CheckProblem[] } {
  const { figures, problems: unread } = readFigures(point, answer.figures ?? {});
  const judged = unread.length > 0 ? { verdicts: [], problems: unread } : judgeFigures(point, figures);
  const remarks = answer.remarks?.trim();
  const finding: Finding = {
    point: point.key,
    severity: point.severity,
    failed: answer.answer !== 'good' || judged.verdicts.some(({ failed }) => failed),
    workings: judged.verdicts.map(({ working }) => working),
    ...(remarks && { remarks }),
  };
  return { finding, problems: judged.problems };
}
