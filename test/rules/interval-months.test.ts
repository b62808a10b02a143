import { describe, expect, it } from 'vitest';
import { intervalMonths } from '../../src/rules/due/interval.js';
import { every, gear, requirement, scheme, TODAY } from './example-gear.js';

describe('the months an inspection lasts', () => {
  it('are the shortest that the scheme asks of each type', () => {
    const asked = scheme([
      requirement([every(12)]),
      requirement([every(6)]),
      requirement([every(9)]),
      requirement([every(48)], { type: 'proofLoadTest' }),
    ]);
    expect(intervalMonths(gear(), asked, TODAY)).toEqual({ thoroughExamination: 6, proofLoadTest: 48 });
  });

  it('follow the written scheme of the item', () => {
    const ours = gear({ writtenSchemes: [{ type: 'thoroughExamination', months: 3 }] });
    expect(intervalMonths(ours, scheme([requirement([every(12)])]), TODAY)).toEqual({
      thoroughExamination: 3,
    });
  });

  it('are not named where no interval is asked, and not of another kind', () => {
    const asked = scheme([
      requirement([{ when: 'firstUse' }], { type: 'proofLoadTest' }),
      requirement(null),
      requirement([every(6)], { kinds: ['shackle'] }),
    ]);
    expect(intervalMonths(gear(), asked, TODAY)).toEqual({});
  });
});
