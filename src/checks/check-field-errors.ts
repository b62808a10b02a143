import type { FieldError } from '../problem.js';
import type { CheckProblem } from '../rules/checks/check-problem.js';
import type { CheckAnswer, CheckPoint } from '../rules/checks/checklist.js';
import { checkProblemSentence } from '../web/sentences/check-problem.js';

/** The problems of a check as the fields they belong to; a point without an answer belongs to the answers as a whole. */
export function checkFieldErrors(
  problems: readonly CheckProblem[],
  { points, answers }: { points: readonly CheckPoint[]; answers: readonly CheckAnswer[] },
): FieldError[] {
  return problems.map((problem) => {
    const message = checkProblemSentence(problem, points);
    const index = answers.findIndex(({ point }) => point === problem.point);
    if (index < 0) return { field: 'answers', message };
    const figure = problem.figure === undefined ? '' : `.figures.${problem.figure}`;
    return { field: `answers[${index}]${figure}`, message };
  });
}
