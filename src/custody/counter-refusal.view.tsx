import { PROBLEMS, type Problem } from '../problem.js';
import { Refusals } from '../web/components/refusals.js';
import { refusalsOf } from './hand-out-problems.js';

/**
 * Why the counter refuses, said at once. Unlike the note of other pages it does not take the focus: the next scan must
 * land in the field.
 */
export function CounterRefusal({ problem, tag }: { problem: Problem | undefined; tag?: string | undefined }) {
  if (!problem) return null;
  const { title, next } = PROBLEMS[problem.code];
  const refusals = refusalsOf(problem);
  return (
    <div class="note note-refused" role="alert">
      <p class="note-title">
        <span class="mark" aria-hidden="true">
          ✕
        </span>{' '}
        {refusals.length > 0 && tag ? `${tag} stays here. ` : ''}
        {title}
      </p>
      {refusals.length > 0 ? <Refusals refusals={refusals} /> : <p>{problem.message}</p>}
      <p class="next">{next}</p>
    </div>
  );
}
