import type { Actor } from '../people/actor.js';
import { PROBLEMS, type Problem } from '../problem.js';
import { ProblemNote } from './components/problem-note.js';
import { page } from './page.js';

/** The page for a problem that has no form to go back to. */
export function problemPage(
  problem: Problem,
  { actor, path }: { actor: Actor | undefined; path: string },
): string {
  return page(
    { title: PROBLEMS[problem.code].title, actor, path },
    <>
      <h1>{PROBLEMS[problem.code].title}</h1>
      <ProblemNote problem={problem} />
      <p>
        <a href="/">Go to the start page</a>
      </p>
    </>,
  );
}
