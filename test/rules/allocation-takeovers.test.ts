import { describe, expect, it } from 'vitest';
import { allocate } from '../../src/rules/allocation/allocate.js';
import { item, job, on, places } from '../support/allocation-jobs.js';

describe('taking over from another line', () => {
  it.each([
    { figure: 'transport', at: (amount: number, line: string) => on(line, amount) },
    { figure: 'rating beyond the need', at: (amount: number, line: string) => on(line, 0, amount) },
    { figure: 'days to spare', at: (amount: number, line: string) => on(line, 0, 0, amount) },
  ])('gives back what the item costs there, in $figure', ({ at }) => {
    // SL-1 on B, SL-3 on A: 5 + 10 = 15. SL-1 on A, SL-2 on B: 6 + 7 = 13, though SL-1 on B is the cheapest pair.
    const answer = allocate(
      job({ A: 1, B: 1 }, [
        item(1, 'SL-1', at(6, 'A'), at(5, 'B')),
        item(2, 'SL-2', at(7, 'B')),
        item(3, 'SL-3', at(10, 'A')),
      ]),
    );
    expect(places(answer)).toEqual(['A:SL-1', 'B:SL-2']);
  });

  it('costs no tag, as the item is in use already', () => {
    // Places in tag order 0 to 3: SL-2 and SL-3 (1 + 2) are lower than SL-2 and SL-4 (1 + 3).
    const answer = allocate(
      job({ A: 1, B: 1 }, [
        item(1, 'SL-1'),
        item(2, 'SL-2', on('A'), on('B')),
        item(3, 'SL-3', on('A')),
        item(4, 'SL-4', on('B')),
      ]),
    );
    expect(places(answer)).toEqual(['A:SL-3', 'B:SL-2']);
    expect(answer.cost.tagRank).toBe(3);
  });

  it('goes up the lines as well as down', () => {
    // Only SL-1 serves A, so D must give it up and take SL-2 from C, which takes SL-3 from B, which takes SL-4.
    const answer = allocate(
      job({ A: 1, B: 1, C: 1, D: 1 }, [
        item(1, 'SL-1', on('D'), on('A', 7)),
        item(2, 'SL-2', on('D', 1), on('C')),
        item(3, 'SL-3', on('C', 1), on('B')),
        item(4, 'SL-4', on('B', 1)),
      ]),
    );
    expect(places(answer)).toEqual(['A:SL-1', 'B:SL-4', 'C:SL-3', 'D:SL-2']);
    expect(answer.cost.transport).toBe(10);
  });

  it('may take over once more what was taken over before', () => {
    // Cheapest pair first: SL-1 on B. Then A takes it for 1 and B gets SL-2. C can have none but SL-1: A takes SL-3.
    const answer = allocate(
      job({ A: 1, B: 1, C: 1 }, [
        item(1, 'SL-1', on('A', 1), on('B', 0), on('C', 20)),
        item(2, 'SL-2', on('B', 1)),
        item(3, 'SL-3', on('A', 10)),
      ]),
    );
    expect(places(answer)).toEqual(['A:SL-3', 'B:SL-2', 'C:SL-1']);
    expect(answer.shortfalls).toEqual([]);
  });

  it('goes to the line that pays least for it', () => {
    // One of A and B stays short. SL-1 on B costs 1, on A 5.
    const answer = allocate(
      job({ A: 1, B: 1, C: 1 }, [item(1, 'SL-1', on('A', 5), on('B', 1), on('C')), item(2, 'SL-2', on('C'))]),
    );
    expect(places(answer)).toEqual(['B:SL-1', 'C:SL-2']);
    expect(answer.shortfalls).toEqual([{ lineKey: 'A', missing: 1 }]);
  });
});
