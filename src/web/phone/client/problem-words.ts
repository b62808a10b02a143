import type { CheckProblem } from '../../../rules/checks/check-problem.js';
import type { CheckPoint } from '../../../rules/checks/checklist.js';
import { checkProblemSentence } from '../../sentences/check-problem.js';
import { counted } from './counted.js';

/** What to mend before a check can be saved, in words; points without an answer are counted, not listed. */
export function troubleWords(
  problems: readonly CheckProblem[],
  points: readonly CheckPoint[],
): readonly string[] {
  const open = problems.filter(({ code }) => code === 'point_unanswered').length;
  const others = problems.filter(({ code }) => code !== 'point_unanswered');
  return [
    ...(open > 0 ? [`${counted(open, 'point')} without an answer: press Good or Bad.`] : []),
    ...others.map((problem) => checkProblemSentence(problem, points)),
  ];
}
