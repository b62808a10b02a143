import type { CheckProblem } from '../../../rules/checks/check-problem.js';
import type { CheckAnswer, CheckPoint } from '../../../rules/checks/checklist.js';
import { judgeCheck } from '../../../rules/checks/judge-check.js';

/** What a check comes to on this phone, before the server has heard of it. */
export interface Verdict {
  readonly outcome: 'fit' | 'unfit';
  /** What failed, in words. */
  readonly failed: readonly string[];
}

/** Judges answers by the same rule as the server, or says what keeps them from being judged. */
export function verdictOf(
  points: readonly CheckPoint[],
  answers: readonly CheckAnswer[],
): Verdict | { readonly problems: readonly CheckProblem[] } {
  const judged = judgeCheck(points, answers);
  if ('problems' in judged) return judged;
  const failed = judged.findings.filter((finding) => finding.failed);
  return { outcome: judged.outcome, failed: failed.map((finding) => failedWords(points, finding)) };
}

function failedWords(points: readonly CheckPoint[], finding: { point: string; remarks?: string }): string {
  const { look = finding.point, failsWhen = '' } = points.find(({ key }) => key === finding.point) ?? {};
  const remarks = finding.remarks ? ` Remark: ${finding.remarks}` : '';
  return `${look} Bad: ${failsWhen}${remarks}`;
}
