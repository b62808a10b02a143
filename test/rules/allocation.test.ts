import { describe, expect, it } from 'vitest';
import { allocate } from '../../src/rules/allocation/allocate.js';
import { LARGEST_FIGURE } from '../../src/rules/allocation/cost.js';
import { sortedNaturally } from '../../src/rules/allocation/natural-order.js';
import { item, job, on, places } from '../support/allocation-jobs.js';

describe('what weighs more', () => {
  it('covers a unit more before anything else, at any distance and rating', () => {
    // SL-1 on A costs nothing but leaves B open: shortfall 1. SL-2 on A and SL-1 on B: shortfall 0, transport 9.
    const answer = allocate(
      job({ A: 1, B: 1 }, [item(1, 'SL-1', on('A'), on('B')), item(2, 'SL-2', on('A', 9, 999, 999))]),
    );
    expect(places(answer)).toEqual(['A:SL-2', 'B:SL-1']);
    expect(answer.cost).toEqual({
      shortfall: 0,
      transport: 9,
      overRatingPermille: 999,
      daysToSpare: 999,
      tagRank: 1,
    });
  });

  it.each([
    { decides: 'transport', better: on('A', 0, 900, 900), worse: on('A', 1, 0, 0) },
    { decides: 'rating beyond the need', better: on('A', 3, 0, 900), worse: on('A', 3, 1, 0) },
    { decides: 'days to spare', better: on('A', 3, 5, 0), worse: on('A', 3, 5, 1) },
  ])('$decides decides before all that come after it', ({ better, worse }) => {
    // The better one has the higher tag and the higher figures at every later level.
    const answer = allocate(job({ A: 1 }, [item(1, 'SL-1', worse), item(2, 'SL-2', better)]));
    expect(places(answer)).toEqual(['A:SL-2']);
  });

  it('takes the lowest tags where all else is equal, SL-9 before SL-10', () => {
    const tags = ['SL-10', 'SL-9', 'SL-100', 'SL-11'];
    const answer = allocate(
      job(
        { A: 2 },
        tags.map((tag, place) => item(place + 1, tag, on('A'))),
      ),
    );
    expect(places(answer)).toEqual(['A:SL-9', 'A:SL-10']);
    // Places in natural order: SL-9 is 0, SL-10 is 1.
    expect(answer.cost.tagRank).toBe(1);
  });

  it('tells the largest figures apart to the last unit', () => {
    // Thrice 10^9 km; then 1 day less to spare decides, which a weighted sum in a double would have lost.
    const far = LARGEST_FIGURE;
    const answer = allocate(
      job({ A: 3 }, [
        item(1, 'SL-1', on('A', far, far, far)),
        item(2, 'SL-2', on('A', far, far, far - 1)),
        item(3, 'SL-3', on('A', far, far, far - 1)),
        item(4, 'SL-4', on('A', far, far, far - 1)),
      ]),
    );
    expect(places(answer)).toEqual(['A:SL-2', 'A:SL-3', 'A:SL-4']);
    expect(answer.cost).toEqual({
      shortfall: 0,
      transport: 3_000_000_000,
      overRatingPermille: 3_000_000_000,
      daysToSpare: 2_999_999_997,
      tagRank: 6,
    });
  });
});

describe('lines that compete', () => {
  it('uses an item where the whole job gains most', () => {
    // SL-1 on A, SL-2 on B: 1 + 5 = 6. SL-2 on A, SL-1 on B: 2 + 1 = 3.
    const answer = allocate(
      job({ A: 1, B: 1 }, [item(1, 'SL-1', on('A', 1), on('B', 1)), item(2, 'SL-2', on('A', 2), on('B', 5))]),
    );
    expect(places(answer)).toEqual(['A:SL-2', 'B:SL-1']);
    expect(answer.cost.transport).toBe(3);
  });

  it('moves items along three lines to make room for a fourth', () => {
    // Only SL-1 serves D, so A must give it up and take SL-2 from B, which takes SL-3 from C, which takes SL-4.
    const answer = allocate(
      job({ A: 1, B: 1, C: 1, D: 1 }, [
        item(1, 'SL-1', on('A'), on('D', 7)),
        item(2, 'SL-2', on('A', 1), on('B')),
        item(3, 'SL-3', on('B', 1), on('C')),
        item(4, 'SL-4', on('C', 1)),
      ]),
    );
    expect(places(answer)).toEqual(['A:SL-2', 'B:SL-3', 'C:SL-4', 'D:SL-1']);
    // 1 + 1 + 1 + 7
    expect(answer.cost.transport).toBe(10);
  });

  it('names the line that stays short so that the rest costs least', () => {
    // One item for two lines: on A it costs 4, on B 3.
    const answer = allocate(job({ A: 1, B: 2 }, [item(1, 'SL-1', on('A', 4), on('B', 3))]));
    expect(places(answer)).toEqual(['B:SL-1']);
    expect(answer.shortfalls).toEqual([
      { lineKey: 'A', missing: 1 },
      { lineKey: 'B', missing: 1 },
    ]);
    expect(answer.cost.shortfall).toBe(2);
  });

  it('lists lines in the order given and items of a line in natural tag order', () => {
    const candidates = ['SL-10', 'SL-9', 'SL-8'].map((tag, place) => item(place + 1, tag, on('Z'), on('A')));
    // All alike, so the ranks sum to 0 + 1 + 2 however they are split; Z comes first because it was given first.
    const answer = allocate(job({ Z: 2, A: 1 }, candidates));
    expect(answer.chosen.map(({ lineKey }) => lineKey)).toEqual(['Z', 'Z', 'A']);
    expect(sortedNaturally(answer.chosen.slice(0, 2), ({ tag }) => tag)).toEqual(answer.chosen.slice(0, 2));
    expect(answer.shortfalls).toEqual([]);
  });

  it('lists items of a line in natural tag order though the dearer has the lower tag', () => {
    const dear = item(1, 'SL-9', on('A', 5));
    expect(places(allocate(job({ A: 2 }, [item(2, 'SL-10', on('A')), dear])))).toEqual(['A:SL-9', 'A:SL-10']);
  });
});

describe('next to nothing to do', () => {
  const nothing = { shortfall: 0, transport: 0, overRatingPermille: 0, daysToSpare: 0, tagRank: 0 };

  it('answers a job without lines, without candidates, and lines of no units', () => {
    expect(allocate(job({}, [item(1, 'SL-1')]))).toEqual({
      chosen: [],
      shortfalls: [],
      cost: nothing,
      unmetPins: [],
    });
    expect(allocate(job({ A: 2 }, []))).toEqual({
      chosen: [],
      shortfalls: [{ lineKey: 'A', missing: 2 }],
      cost: { ...nothing, shortfall: 2 },
      unmetPins: [],
    });
    expect(allocate(job({ A: 0 }, [item(1, 'SL-1', on('A'))]))).toEqual({
      chosen: [],
      shortfalls: [],
      cost: nothing,
      unmetPins: [],
    });
  });
});

describe('pins', () => {
  const near = item(1, 'SL-1', on('A'), on('B'));
  const far = item(2, 'SL-2', on('A', 8), on('B', 8));

  it('uses a pinned item on its line though another is cheaper', () => {
    const answer = allocate(job({ A: 1, B: 0 }, [near, far], [{ itemId: 2, lineKey: 'A' }]));
    expect(places(answer)).toEqual(['A:SL-2']);
    expect(answer.cost.transport).toBe(8);
    expect(answer.unmetPins).toEqual([]);
  });

  it('keeps a pinned item on its line though another line stays short for it', () => {
    const answer = allocate(
      job({ A: 1, B: 1 }, [near, item(3, 'SL-3', on('A'))], [{ itemId: 1, lineKey: 'A' }]),
    );
    expect(places(answer)).toEqual(['A:SL-1']);
    expect(answer.shortfalls).toEqual([{ lineKey: 'B', missing: 1 }]);
  });

  it('never honours a pin over a refusal, and says so', () => {
    const lashing = item(3, 'RS-3', on('B'));
    const pins = [
      { itemId: 3, lineKey: 'A' },
      { itemId: 99, lineKey: 'A' },
      { itemId: 1, lineKey: 'C' },
    ];
    const answer = allocate(job({ A: 1, B: 0 }, [near, lashing], pins));
    expect(places(answer)).toEqual(['A:SL-1']);
    expect(answer.unmetPins).toEqual([
      { itemId: 3, lineKey: 'A', reason: 'not_fit_for_line' },
      { itemId: 1, lineKey: 'C', reason: 'unknown_line' },
      { itemId: 99, lineKey: 'A', reason: 'not_fit_for_line' },
    ]);
  });

  it('fills a line with the lowest pinned tags and reports the others', () => {
    const tags = ['SL-10', 'SL-9', 'SL-8'];
    const candidates = tags.map((tag, place) => item(place + 1, tag, on('A')));
    const pins = candidates.map(({ itemId }) => ({ itemId, lineKey: 'A' }));
    const answer = allocate(job({ A: 2 }, candidates, pins));
    expect(places(answer)).toEqual(['A:SL-8', 'A:SL-9']);
    expect(answer.unmetPins).toEqual([{ itemId: 1, lineKey: 'A', reason: 'line_full' }]);
  });

  it('leaves an item whose pin found the line full free for another line', () => {
    const pins = [
      { itemId: 1, lineKey: 'A' },
      { itemId: 2, lineKey: 'A' },
    ];
    expect(places(allocate(job({ A: 1, B: 1 }, [near, far], pins)))).toEqual(['A:SL-1', 'B:SL-2']);
  });

  it('holds an item by one pin only; the same pin twice is one pin', () => {
    const pins = ['B', 'A', 'A'].map((lineKey) => ({ itemId: 1, lineKey }));
    const answer = allocate(job({ A: 1, B: 1 }, [near], pins));
    expect(places(answer)).toEqual(['A:SL-1']);
    expect(answer.unmetPins).toEqual([{ itemId: 1, lineKey: 'B', reason: 'pinned_to_another_line' }]);
    const unfit = [1, 1].map(() => ({ itemId: 1, lineKey: 'C' }));
    expect(
      allocate(
        job(
          { A: 1 },
          [near].map(() => item(1, 'SL-1', on('A'))),
          unfit,
        ),
      ).unmetPins,
    ).toHaveLength(1);
  });

  it('honours a second pin where the first could not be met', () => {
    const pins = [
      { itemId: 1, lineKey: 'A' },
      { itemId: 1, lineKey: 'B' },
    ];
    const answer = allocate(job({ A: 0, B: 1 }, [near, item(3, 'SL-0', on('B'))], pins));
    expect(places(answer)).toEqual(['B:SL-1']);
    expect(answer.unmetPins).toEqual([{ itemId: 1, lineKey: 'A', reason: 'line_full' }]);
  });
});

describe('input without meaning', () => {
  it.each([
    {
      says: "item '1' is given twice",
      input: job({ A: 1 }, [item(1, 'SL-1', on('A')), item(1, 'SL-2', on('A'))]),
    },
    {
      says: "tag 'SL-1' is given twice",
      input: job({ A: 1 }, [item(1, 'SL-1', on('A')), item(2, 'SL-1', on('A'))]),
    },
    {
      says: "option for line 'A' is given twice",
      input: job({ A: 1 }, [item(1, 'SL-1', on('A'), on('A'))]),
    },
    { says: "'SL-1' is offered for 'B', which is no line", input: job({ A: 1 }, [item(1, 'SL-1', on('B'))]) },
    {
      says: "line 'A' is given twice",
      input: { ...job({}, []), lines: [1, 2].map((quantity) => ({ key: 'A', quantity })) },
    },
  ])('throws a RangeError: $says', ({ says, input }) => {
    expect(() => allocate(input)).toThrow(new RangeError(says));
  });

  it.each([-1, 0.5, Number.NaN, Number.POSITIVE_INFINITY, 2 ** 53])(
    'throws for a quantity of %d',
    (quantity) => {
      const says = `quantity ${quantity} of line 'A' is not a whole number from 0`;
      expect(() => allocate(job({ A: quantity }, []))).toThrow(new RangeError(says));
    },
  );

  it.each([-1, 0.5, Number.NaN, LARGEST_FIGURE + 1])('throws for a figure of %d in any place', (figure) => {
    const options = [
      ['transport', on('A', figure)],
      ['overRatingPermille', on('A', 0, figure)],
      ['daysToSpare', on('A', 0, 0, figure)],
    ] as const;
    for (const [name, option] of options) {
      const says = `${name} ${figure} of 'SL-1' is not a whole number from 0 to 1000000000`;
      expect(() => allocate(job({ A: 1 }, [item(1, 'SL-1', option)]))).toThrow(new RangeError(says));
    }
  });
});
