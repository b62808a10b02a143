import { Catalogue } from '../../src/catalogue/catalogue.js';
import type { CheckAnswer } from '../../src/rules/checks/checklist.js';
import type { TestServer } from './test-server.js';

/** Answers to every point of the checklist of a kind: good, but for the points named. */
export function checkAnswers(
  { app }: Pick<TestServer, 'app'>,
  kind: string,
  bad: readonly string[] = [],
): CheckAnswer[] {
  const points = app.get(Catalogue).kind(kind).checklist;
  for (const key of bad) {
    if (!points.some((point) => point.key === key)) throw new Error(`${kind} has no point ${key}`);
  }
  return points.map(({ key }) => ({ point: key, answer: bad.includes(key) ? 'bad' : 'good' }));
}

/** The first point of a kind that is a danger, or one to watch, when it fails. */
export function pointOf(
  { app }: Pick<TestServer, 'app'>,
  kind: string,
  severity: 'immediateDanger' | 'observation',
): string {
  const point = app
    .get(Catalogue)
    .kind(kind)
    .checklist.find((entry) => entry.severity === severity);
  if (!point) throw new Error(`${kind} has no point of ${severity}`);
  return point.key;
}
