import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { loadCatalogue } from '../../src/catalogue/load-catalogue.js';
import { packageRoot } from '../../src/package-root.js';
import type { CheckAnswer, CheckPoint } from '../../src/rules/checks/checklist.js';
import { judgeCheck } from '../../src/rules/checks/judge-check.js';
import { golden } from '../rules/golden.js';

interface PublishedLimit {
  readonly kind: string;
  readonly point: string;
  readonly part: string;
  readonly passes: NonNullable<CheckAnswer['figures']>;
  readonly fails: NonNullable<CheckAnswer['figures']>;
  readonly source: string;
  readonly verified?: string;
}

const catalogue = loadCatalogue(join(packageRoot(), 'config'));
const limits = golden<readonly PublishedLimit[]>('discard-criteria');

/** Every point answered good, and one of them measured. */
function allGood(points: readonly CheckPoint[], measured: Partial<CheckAnswer> = {}): CheckAnswer[] {
  return points.map(({ key }) => ({
    point: key,
    answer: 'good',
    ...(measured.point === key && measured),
  }));
}

/** The keys of the points that fail where `figures` are measured and nothing looks bad. */
function failing({ kind, point }: PublishedLimit, figures: PublishedLimit['passes']): string[] {
  const points = catalogue.kind(kind).checklist;
  const judged = judgeCheck(points, allGood(points, { point, figures }));
  if ('problems' in judged) throw new Error(JSON.stringify(judged.problems));
  return judged.findings.filter(({ failed }) => failed).map((finding) => finding.point);
}

describe('published limits', () => {
  it.each(limits.map((limit) => [`${limit.kind}: ${limit.source}`, limit] as const))('%s', (_name, limit) => {
    expect(failing(limit, limit.passes)).toEqual([]);
    expect(failing(limit, limit.fails)).toEqual([limit.point]);
  });

  it('stand behind every criterion of the checklists', () => {
    const held = catalogue
      .kinds()
      .flatMap(({ kind, checklist }) =>
        checklist.flatMap(({ key, criteria }) => criteria.map(({ part }) => `${kind} ${key} ${part}`)),
      );
    const published = limits.map(({ kind, point, part }) => `${kind} ${point} ${part}`);
    expect([...new Set(published)].sort()).toEqual([...new Set(held)].sort());
  });
});

describe.each(catalogue.kinds().map(({ kind, checklist }) => [kind, checklist] as const))(
  'the checklist of a %s',
  (_kind, points) => {
    it('is short enough for twelve items in five minutes', () => {
      expect(points.length).toBeGreaterThanOrEqual(5);
      expect(points.length).toBeLessThanOrEqual(9);
    });

    it('passes an item that is good all over, and none with one bad point', () => {
      expect(judgeCheck(points, allGood(points))).toMatchObject({ outcome: 'fit' });
      for (const { key } of points) {
        const answers = allGood(points, { point: key, answer: 'bad' });
        expect(judgeCheck(points, answers)).toMatchObject({ outcome: 'unfit' });
      }
    });
  },
);
