import type { FieldError } from '../problem.js';
import type { CheckProblem, CheckProblemCode } from '../rules/checks/check-problem.js';
import type { CheckAnswer, CheckPoint } from '../rules/checks/checklist.js';

type Words = (problem: CheckProblem) => string;

const WORDS: Readonly<Record<CheckProblemCode, Words>> = {
  checklist_empty: () => 'there is no checklist for this kind: have a competent person look at it',
  unknown_point: ({ point }) => `'${point}' is no point of the checklist of this kind`,
  answered_twice: () => 'is answered twice: answer each point once',
  point_unanswered: () => 'answer this point: good or bad',
  unknown_figure: ({ figure }) => `no figure '${figure}' is asked for here`,
  unit_not_of_figure: () => 'is in a unit that does not go with what is measured',
  figure_unreadable: () => 'write the figure in digits, such as 12.5',
  figure_negative: () => 'cannot be less than nothing',
  figure_not_whole: () => 'count in whole numbers',
  figure_out_of_range: ({ most }) => `cannot be more than ${most}: measure again`,
  figure_zero: () => 'cannot be nothing: measure again',
  partner_missing: () => 'is missing: the other figure says nothing without it',
  figures_doubtful: () => 'does not go with the other figure: measure again',
};

/** The problems of a check as the fields they belong to; a point that is not answered is named by its instruction. */
export function checkFieldErrors(
  problems: readonly CheckProblem[],
  { points, answers }: { points: readonly CheckPoint[]; answers: readonly CheckAnswer[] },
): FieldError[] {
  return problems.map((problem) => {
    const index = answers.findIndex(({ point }) => point === problem.point);
    const message = WORDS[problem.code](problem);
    if (index < 0) {
      const look = points.find(({ key }) => key === problem.point)?.look;
      return { field: 'answers', message: look === undefined ? message : `${message} (${look})` };
    }
    const figure = problem.figure === undefined ? '' : `.figures.${problem.figure}`;
    return { field: `answers[${index}]${figure}`, message };
  });
}
