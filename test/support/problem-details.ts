import { expect } from 'vitest';
import type { RawAnswer } from './hostile-client.js';

/** What RFC 9457 and the API promise of every refusal. */
interface ProblemDetails {
  readonly type: string;
  readonly title: string;
  readonly status: number;
  readonly detail: string;
  readonly code: string;
  readonly next: string;
  readonly errors?: readonly { readonly field: string; readonly message: string }[];
}

/** Expects that the answer is no mistake of the server, and problem details (RFC 9457) if it is a refusal. Gives those. */
export function expectProblemDetails(answer: RawAnswer, what: string): ProblemDetails | undefined {
  expect(answer.status, `${what}: ${answer.text.slice(0, 200)}`).toBeLessThan(500);
  if (answer.status < 400) return undefined;
  expect(answer.contentType, what).toMatch(/^application\/problem\+json/);
  const problem = JSON.parse(answer.text) as ProblemDetails;
  expect(problem.status, what).toBe(answer.status);
  expect(URL.canParse(problem.type), what).toBe(true);
  for (const member of ['title', 'detail', 'code', 'next'] as const) {
    expect(problem[member], `${what}: ${member}`).toMatch(/\S/);
  }
  for (const { field, message } of problem.errors ?? []) {
    expect(typeof field, what).toBe('string');
    expect(message, what).toMatch(/\S/);
  }
  return problem;
}
