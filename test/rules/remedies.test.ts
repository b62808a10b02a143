import { describe, expect, it } from 'vitest';
import { remedies } from '../../src/rules/allocation/remedies.js';
import type { RefusedCandidate } from '../../src/rules/allocation/remedy.js';
import { inShort, needA, refusal, refused, shortBy } from '../support/remedy-inputs.js';
import { seededRandom } from '../support/seeded-random.js';

describe('the order of effort', () => {
  const oneOfEach = [
    refused(1, [refusal('promised_elsewhere', { on: '2026-06-12' })]),
    refused(2, [refusal('out_of_date', { subject: 'thoroughExamination' })]),
    refused(3, [refusal('at_another_store')]),
    refused(4, [refusal('excluded_by_storeman')]),
  ];

  it.each([
    { missing: 1, expected: ['liftExclusion:SL-4'] },
    { missing: 2, expected: ['liftExclusion:SL-4', 'moveFromStore:SL-3'] },
    { missing: 3, expected: ['liftExclusion:SL-4', 'moveFromStore:SL-3', 'examine:SL-2'] },
    {
      missing: 4,
      expected: ['liftExclusion:SL-4', 'moveFromStore:SL-3', 'examine:SL-2', 'waitForReturn:SL-1'],
    },
  ])('stops when $missing missing are covered', ({ missing, expected }) => {
    const answers = remedies(shortBy(missing, oneOfEach));
    expect(inShort(answers)).toEqual(expected);
    expect(answers.map(({ wholeHire }) => wholeHire)).toEqual([undefined]);
  });

  it('hires what own gear leaves open, and offers to hire the whole instead', () => {
    // 4 of 6 are covered by own gear: hire 2, or all 6.
    const [answer] = remedies(shortBy(6, oneOfEach));
    expect(answer?.remedies).toHaveLength(5);
    const hire = { kind: 'hire', lineKey: 'A', items: [], rating: needA };
    expect(answer?.remedies.at(-1)).toEqual({ ...hire, covers: 2 });
    expect(answer?.wholeHire).toEqual({ ...hire, covers: 6 });
  });

  it('hires everything, without an alternative, where no own gear helps', () => {
    expect(remedies(shortBy(2, [], { lines: [{ key: 'A' }] }))).toEqual([
      { lineKey: 'A', missing: 2, remedies: [{ kind: 'hire', lineKey: 'A', items: [], covers: 2 }] },
    ]);
  });

  it('offers no more items than are missing, in natural tag order', () => {
    const items = [10, 9, 11].map((itemId) => refused(itemId, [refusal('excluded_by_storeman')]));
    expect(inShort(remedies(shortBy(2, items)))).toEqual(['liftExclusion:SL-9,SL-10']);
    const dated = [10, 9, 11].map((itemId) => refused(itemId, [refusal('never_examined')]));
    expect(inShort(remedies(shortBy(2, dated)))).toEqual(['examine:SL-9,SL-10']);
    const returning = [10, 9, 11].map((itemId) =>
      refused(itemId, [refusal('not_back_yet', { on: '2026-06-12' })]),
    );
    expect(inShort(remedies(shortBy(2, returning)))).toEqual(['waitForReturn:SL-9,SL-10']);
  });
});

describe('moving from another store', () => {
  const away = [refusal('at_another_store')];
  const at = (storeId: number, storeName: string) => ({ storeId, storeName });

  it('is one remedy a store, the store with the most items first, then by name', () => {
    const items = [
      refused(1, away, at(2, 'Dock 10')),
      refused(2, away, at(4, 'Dock 9')),
      refused(3, away, at(3, 'North')),
      refused(4, away, at(3, 'North')),
    ];
    // North has 2 of 4, the docks 1 each; Dock 9 comes before Dock 10.
    const [answer] = remedies(shortBy(3, items));
    expect(answer?.remedies).toEqual([
      {
        kind: 'moveFromStore',
        lineKey: 'A',
        store: { id: 3, name: 'North' },
        items: [
          { itemId: 3, tag: 'SL-3' },
          { itemId: 4, tag: 'SL-4' },
        ],
        covers: 2,
      },
      {
        kind: 'moveFromStore',
        lineKey: 'A',
        store: { id: 4, name: 'Dock 9' },
        items: [{ itemId: 2, tag: 'SL-2' }],
        covers: 1,
      },
    ]);
  });

  it('tells stores of one name apart by their id', () => {
    const items = [refused(1, away, at(8, 'Dock')), refused(2, away, at(7, 'Dock'))];
    expect(inShort(remedies(shortBy(2, items)))).toEqual(['moveFromStore:SL-2', 'moveFromStore:SL-1']);
  });
});

describe('several short lines', () => {
  const excluded = [refusal('excluded_by_storeman')];
  const onBoth = (itemId: number): RefusedCandidate =>
    refused(itemId, [], { lines: ['A', 'B'].map((lineKey) => ({ lineKey, refusals: excluded })) });
  const lines = [{ key: 'B' }, { key: 'A', rating: needA }, { key: 'C' }];

  it('counts an item for one line only: the first in line order', () => {
    const shortfalls = [
      { lineKey: 'A', missing: 2 },
      { lineKey: 'B', missing: 1 },
    ];
    const answers = remedies(shortBy(0, [onBoth(1), onBoth(2)], { lines, shortfalls }));
    expect(answers.map(({ lineKey, missing }) => [lineKey, missing])).toEqual([
      ['B', 1],
      ['A', 2],
    ]);
    expect(inShort(answers)).toEqual(['liftExclusion:SL-1', 'liftExclusion:SL-2', 'hire:1']);
  });

  it('never offers an item that serves a line of the job already', () => {
    expect(inShort(remedies(shortBy(1, [onBoth(1), onBoth(2)], { chosen: [{ itemId: 1 }] })))).toEqual([
      'liftExclusion:SL-2',
    ]);
  });

  it('answers only lines that miss something', () => {
    expect(remedies(shortBy(0, [onBoth(1)]))).toEqual([]);
  });

  it('gives the same answer whatever the order of the refused items', () => {
    const codes = ['excluded_by_storeman', 'at_another_store', 'never_examined', 'not_back_yet'] as const;
    const items = Array.from({ length: 24 }, (_, place) => {
      const code = codes[place % codes.length] ?? 'scrapped';
      const refusals = [refusal(code, { on: '2026-06-12' })];
      return refused(place + 1, [], { lines: ['A', 'B'].map((lineKey) => ({ lineKey, refusals })) });
    });
    const shortfalls = [
      { lineKey: 'A', missing: 11 },
      { lineKey: 'B', missing: 20 },
    ];
    const answer = remedies(shortBy(0, items, { lines, shortfalls }));
    const offered = answer.flatMap(({ remedies: found }) => found.flatMap((remedy) => [...remedy.items]));
    expect(new Set(offered.map(({ itemId }) => itemId)).size).toBe(24);
    expect(offered).toHaveLength(24);
    for (let seed = 1; seed <= 20; seed += 1) {
      const shuffled = seededRandom(seed).shuffled(items);
      expect(remedies(shortBy(0, shuffled, { lines, shortfalls }))).toEqual(answer);
    }
  });
});

describe('input without meaning', () => {
  const item = refused(1, [refusal('never_examined')]);
  it.each([
    { says: "item '1' is given twice", input: shortBy(1, [item, { ...item, tag: 'SL-2' }]) },
    { says: "tag 'SL-1' is given twice", input: shortBy(1, [item, { ...item, itemId: 2 }]) },
    { says: "line 'A' is given twice", input: shortBy(1, [], { lines: [{ key: 'A' }, { key: 'A' }] }) },
    {
      says: "shortfall of 'A' is given twice",
      input: shortBy(1, [], { shortfalls: [1, 1].map((missing) => ({ lineKey: 'A', missing })) }),
    },
    { says: "'A' is short, but no line", input: shortBy(1, [], { lines: [{ key: 'B' }] }) },
    { says: '-1 units missing is not a whole number from 0', input: shortBy(-1, []) },
    { says: '0.5 units missing is not a whole number from 0', input: shortBy(0.5, []) },
  ])('throws a RangeError: $says', ({ says, input }) => {
    expect(() => remedies(input)).toThrow(new RangeError(says));
  });
});
