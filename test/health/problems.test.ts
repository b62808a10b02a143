import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { packageRoot } from '../../src/package-root.js';
import { PROBLEMS } from '../../src/problem.js';

describe('the error list of DEVELOPERS.md', () => {
  it('is the catalogue of the code, line for line', () => {
    const guide = readFileSync(join(packageRoot(), 'DEVELOPERS.md'), 'utf8');
    const listed = guide.split('\n').filter((line) => /^\| `\w+` \| \d{3} \|/.test(line));
    const expected = Object.entries(PROBLEMS).map(
      ([code, { status, title }]) => `| \`${code}\` | ${status} | ${title} |`,
    );
    expect(listed).toEqual(expected);
  });
});
