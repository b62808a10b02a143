import type { CheckProblem } from '../../../rules/checks/check-problem.js';
import type { CheckAnswer } from '../../../rules/checks/checklist.js';
import { judgeCheck, type Finding } from '../../../rules/checks/judge-check.js';
import type { Figure, Working } from '../../../rules/working.js';
import { figure } from '../../sentences/words.js';
import type { PhoneKind } from './contract.js';

/** What a check comes to on this phone, before the server has heard of it. */
export interface Verdict {
  readonly outcome: 'fit' | 'unfit';
  /** What failed, in words. */
  readonly failed: readonly string[];
}

type Asked = Pick<PhoneKind, 'points' | 'sources'>;

/** Judges answers by the same rule as the server, or says what keeps them from being judged. */
export function verdictOf(
  asked: Asked,
  answers: readonly CheckAnswer[],
): Verdict | { readonly problems: readonly CheckProblem[] } {
  const judged = judgeCheck(asked.points, answers);
  if ('problems' in judged) return judged;
  const failed = judged.findings.filter((finding) => finding.failed);
  return { outcome: judged.outcome, failed: failed.map((finding) => failedWords(asked, finding)) };
}

function failedWords(asked: Asked, { point, remarks, workings }: Finding): string {
  const { look = point, failsWhen = '' } = asked.points.find(({ key }) => key === point) ?? {};
  const measured = workings.filter(({ caution }) => caution).map((working) => measuredWords(asked, working));
  const seen = remarks ? [`Remark: ${remarks}`] : [];
  return [look, `Bad: ${failsWhen}`, ...measured, ...seen].join(' ');
}

/** What was measured, its limit, and who sets it. */
function measuredWords({ sources = [] }: Asked, { inputs, result, source }: Working): string {
  const limit = inputs.find(({ name }) => name === 'limit');
  const measured = [...inputs.filter((input) => input !== limit), result].map(named).join(', ');
  const title = sources.find(({ key }) => key === source)?.title ?? source;
  return `Measured: ${measured}; the limit is ${limit ? figure(limit.value, limit.unit) : 'not known'}. Source: ${title}.`;
}

function named({ name, value, unit }: Figure): string {
  return `${name} ${figure(value, unit)}`;
}
