import { PROBLEMS, type Problem } from '../../problem.js';

/** What is wrong and what to do next, above a form or on a page of its own. */
export function ProblemNote({ problem }: { problem: Problem | undefined }) {
  if (!problem) return null;
  const { title, next } = PROBLEMS[problem.code];
  const errors = problem.more.errors ?? [];
  return (
    <div class="note note-refused" role="alert" id="problem" tabIndex={-1}>
      <p class="note-title">
        <span class="mark" aria-hidden="true">
          ✕
        </span>{' '}
        {title}
      </p>
      {errors.length > 0 ? (
        <ul>
          {errors.map(({ field, message }) => (
            <li key={field}>
              <strong>{field}</strong>: {message}
            </li>
          ))}
        </ul>
      ) : (
        <p>{problem.message}</p>
      )}
      <p class="next">{next}</p>
    </div>
  );
}
