import { describe, expect, it } from 'vitest';
import { likeFaults, rowWords } from '../../src/register/import/like-faults.js';

describe('faults that read alike', () => {
  it('are said once, the commonest first', () => {
    const unknown = { column: 'Where', cell: 'North', code: 'unknown_store' as const };
    const blank = { row: 3, column: 'Serial', code: 'blank_cell' as const };
    const groups = likeFaults([blank, { ...unknown, row: 4 }, { ...unknown, row: 6 }]);
    expect(groups.map(({ rows }) => rows)).toEqual([[4, 6], [3]]);
  });

  it('stay apart when a word of the sentence differs', () => {
    const fault = { column: 'Kind', cell: 'x', code: 'unknown_kind' as const };
    expect(
      likeFaults([
        { ...fault, row: 1, subject: 'sling' },
        { ...fault, row: 2 },
      ]),
    ).toHaveLength(2);
  });

  it.each([
    [[5], '5'],
    [[5, 6, 7, 9], '5–7, 9'],
    [[1, 3, 5, 7, 9, 11, 13, 15, 17, 19, 21, 22], '1, 3, 5, 7, 9, 11, 13, 15, 17, 19 and 2 more'],
  ])('name rows %j as %s', (rows, words) => {
    expect(rowWords(rows)).toBe(words);
  });
});
