import { describe, expect, it } from 'vitest';
import type { BookedItem } from '../../src/custody/booked-items.js';
import { NOTHING_WRONG, type BookingCheck } from '../../src/custody/check-booking.js';
import type { ChosenItem, PlannedLine } from '../../src/planner/job-plan.js';
import { compareBookings } from '../../src/planner/what-if/compare-bookings.js';
import { compareItems, leavingItemIds } from '../../src/planner/what-if/compare-items.js';
import { compareLines } from '../../src/planner/what-if/compare-lines.js';
import type { Refusal } from '../../src/rules/fitness/refusal.js';
import type { GearLine } from '../../src/rules/lines/need.js';

const LIFTER: GearLine = {
  key: 'panelLifter',
  label: 'Panel lifter',
  kind: 'panelLifter',
  duty: 'lifting',
  quantity: 2,
  rating: { measure: 'workingLoadLimit', value: '478', unit: 'kg' },
  dimensions: [{ dimension: 'lengthM', rule: 'atLeast', value: '5', source: 'common-practice' }],
  workings: [],
};

const TOO_WEAK: Refusal = {
  code: 'under_rated',
  needed: '500',
  has: '480',
  unit: 'kg',
  source: 'common-practice',
};

function planned(
  changes: Partial<GearLine> = {},
  { missing = 0, tags = [] }: { missing?: number; tags?: readonly string[] } = {},
): PlannedLine {
  const chosen = tags.map(chosenItem);
  const answer = { served: 0, chosen, refused: [], refusedCount: 0, reasons: [], missing };
  return { line: { ...LIFTER, ...changes }, ...answer };
}

/** `PL-7` is the item with the number 7. */
function chosenItem(tag: string): ChosenItem {
  const itemId = Number(tag.replace(/\D/g, ''));
  const from = { itemId, tag, storeId: 1, storeName: 'Yard' };
  return { ...from, held: false, pinned: false, cautions: [], workings: [] };
}

describe('lines compared', () => {
  const changesOf = (after: PlannedLine, before = planned()) =>
    compareLines([before], [after]).map(({ changes }) => changes);

  it('lists nothing where nothing differs, however a figure is written', () => {
    expect(changesOf(planned())).toEqual([]);
    const rating = { measure: 'workingLoadLimit', value: '478.00', unit: 'kg' } as const;
    const dimensions = [
      { dimension: 'lengthM', rule: 'atLeast', value: '5.0', source: 'loler-1998' },
    ] as const;
    expect(changesOf(planned({ rating, dimensions, label: 'Lifter' }))).toEqual([]);
  });

  it('names each thing that differs', () => {
    const rated = (changes: Partial<NonNullable<GearLine['rating']>>) =>
      planned({ rating: { measure: 'workingLoadLimit', value: '478', unit: 'kg', ...changes } });
    const sized = (changes: Partial<GearLine['dimensions'][number]>) =>
      planned({
        dimensions: [
          { dimension: 'lengthM', rule: 'atLeast', value: '5', source: 'common-practice', ...changes },
        ],
      });
    expect(changesOf(planned({ quantity: 3 }))).toEqual([['quantity']]);
    expect(changesOf(planned({}, { missing: 1 }))).toEqual([['shortfall']]);
    expect(changesOf(rated({ value: '478.1' }))).toEqual([['rating']]);
    expect(changesOf(rated({ unit: 'N' }))).toEqual([['rating']]);
    expect(changesOf(rated({ measure: 'ratedCapacity' }))).toEqual([['rating']]);
    expect(changesOf(sized({ value: '5.1' }))).toEqual([['sizes']]);
    expect(changesOf(sized({ rule: 'equals' }))).toEqual([['sizes']]);
    expect(changesOf(sized({ dimension: 'barDiameterMm' }))).toEqual([['sizes']]);
    expect(changesOf(planned({ dimensions: [] }))).toEqual([['sizes']]);
    expect(changesOf(planned(), planned({ dimensions: [] }))).toEqual([['sizes']]);
    expect(changesOf(planned({ quantity: 4, dimensions: [] }, { missing: 2 }))).toEqual([
      ['quantity', 'sizes', 'shortfall'],
    ]);
  });

  it('tells a rating that comes or goes from one that stays away', () => {
    const { rating: _rating, ...unrated } = LIFTER;
    const bare: PlannedLine = { ...planned(), line: unrated };
    expect(changesOf(bare)).toEqual([['rating']]);
    expect(changesOf(planned(), bare)).toEqual([['rating']]);
    expect(changesOf(bare, bare)).toEqual([]);
  });

  it('gives what comes in its place and what goes at the end, with how they stand', () => {
    const gone = planned({ key: 'gone', label: 'Gone' }, { missing: 1 });
    const fresh = planned({ key: 'fresh', label: 'Fresh', quantity: 1 });
    const stand = {
      kind: 'panelLifter',
      duty: 'lifting',
      dimensions: LIFTER.dimensions,
      rating: LIFTER.rating,
    };
    expect(compareLines([gone, planned()], [fresh, planned({ quantity: 3 })])).toEqual([
      { key: 'fresh', label: 'Fresh', changes: ['comes'], after: { ...stand, quantity: 1, missing: 0 } },
      {
        key: 'panelLifter',
        label: 'Panel lifter',
        changes: ['quantity'],
        before: { ...stand, quantity: 2, missing: 0 },
        after: { ...stand, quantity: 3, missing: 0 },
      },
      { key: 'gone', label: 'Gone', changes: ['goes'], before: { ...stand, quantity: 2, missing: 1 } },
    ]);
  });

  it('takes a line of none for no line, and another kind or duty for another line', () => {
    const none = planned({ quantity: 0 });
    expect(changesOf(none)).toEqual([['goes']]);
    expect(changesOf(planned({ quantity: 1 }), none)).toEqual([['comes']]);
    expect(changesOf(none, none)).toEqual([]);
    expect(changesOf(planned({ kind: 'sling' }))).toEqual([['comes'], ['goes']]);
    expect(changesOf(planned({ duty: 'lashing' }))).toEqual([['comes'], ['goes']]);
  });
});

describe('items compared', () => {
  const on = (key: string, tags: readonly string[], changes: Partial<GearLine> = {}) =>
    planned({ key, label: key.toUpperCase(), ...changes }, { tags });
  const fit = () => [];
  const line = (key: string) => ({ key, label: key.toUpperCase() });
  const item = (tag: string) => ({ itemId: Number(tag.slice(3)), tag, storeName: 'Yard', refusals: [] });

  it('names what joins, moves and leaves in natural order of the tags', () => {
    const before = [on('a', ['PL-10', 'PL-2']), on('b', ['PL-3'])];
    const after = [on('a', ['PL-3', 'PL-2']), on('b', ['PL-1'])];
    expect(compareItems(before, after, fit)).toEqual([
      { ...item('PL-1'), change: 'joins', after: line('b') },
      { ...item('PL-3'), change: 'moves', before: line('b'), after: line('a') },
      { ...item('PL-10'), change: 'leaves', before: line('a'), reason: 'not_chosen' },
    ]);
    expect(leavingItemIds(before, after)).toEqual([10]);
    expect(compareItems(before, before, fit)).toEqual([]);
  });

  it('says why something leaves: unfit with every reason, or without a line', () => {
    const before = [on('a', ['PL-1']), on('b', ['PL-2']), on('c', ['PL-3']), on('d', ['PL-4'])];
    const after = [on('a', []), on('b', [], { quantity: 0 }), on('d', [], { kind: 'sling' })];
    const asked: (readonly [number, string])[] = [];
    const refusalsOf = (itemId: number, { key }: GearLine) => {
      asked.push([itemId, key]);
      return [TOO_WEAK];
    };
    const found = compareItems(before, after, refusalsOf);
    expect(found.map(({ tag, reason, refusals }) => [tag, reason, refusals])).toEqual([
      ['PL-1', 'not_fit', [TOO_WEAK]],
      ['PL-2', 'line_gone', []],
      ['PL-3', 'line_gone', []],
      ['PL-4', 'line_gone', []],
    ]);
    expect(asked).toEqual([[1, 'a']]);
  });
});

describe('bookings compared', () => {
  const row = (number: number, state: BookedItem['state'] = 'reserved'): BookedItem => ({
    id: number,
    jobId: 1,
    itemId: 100 + number,
    tag: `PL-${number}`,
    kind: 'panelLifter',
    storeName: 'Yard',
    lineKey: 'panelLifter',
    fromDay: '2026-06-01',
    toDay: '2026-06-02',
    state,
    returnRemarks: null,
    version: 1,
  });
  const unfit = (number: number, refusals: readonly Refusal[], state?: BookedItem['state']) => ({
    row: row(number, state),
    lineLabel: 'Panel lifter',
    refusals,
  });
  const check = (found: Partial<BookingCheck>): BookingCheck => ({ ...NOTHING_WRONG, ...found });
  const named = (number: number, state: string) => ({
    itemId: 100 + number,
    tag: `PL-${number}`,
    state,
    lineKey: 'panelLifter',
  });

  it('names what becomes unfit, and what is unfit for other reasons than before', () => {
    const weaker: Refusal = { ...TOO_WEAK, needed: '510' };
    const before = check({ unfit: [unfit(1, [TOO_WEAK]), unfit(2, [TOO_WEAK]), unfit(4, [TOO_WEAK])] });
    const after = check({
      unfit: [unfit(1, [{ ...TOO_WEAK }]), unfit(2, [weaker]), unfit(3, [weaker], 'out')],
    });
    expect(compareBookings(before, after)).toEqual({
      unfit: [
        { ...named(2, 'reserved'), lineLabel: 'Panel lifter', already: true, refusals: [weaker] },
        { ...named(3, 'out'), lineLabel: 'Panel lifter', already: false, refusals: [weaker] },
      ],
      surplus: [],
    });
  });

  it('names what is needed no more, once', () => {
    const before = check({ surplus: [row(1)] });
    expect(compareBookings(before, check({ surplus: [row(1), row(2)] }))).toEqual({
      unfit: [],
      surplus: [named(2, 'reserved')],
    });
    expect(compareBookings(before, NOTHING_WRONG)).toEqual({ unfit: [], surplus: [] });
  });
});
