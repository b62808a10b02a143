import { describe, expect, it } from 'vitest';
import type { VisitNeed } from '../../src/rules/reminders/visit-need.js';
import { planVisits } from '../../src/rules/reminders/visits.js';
import { dayAt } from './reminders-example.js';

/** Day 0 is Friday 1 January 2027; every day is a working day here. */
const TERMS = {
  today: dayAt(0),
  calendarOf: () => ({ workDays: [1, 2, 3, 4, 5, 6, 7], holidays: [] }),
  mostDaysEarly: 42,
};

function need(itemId: number, storeId: number, due: number, overdue = false): VisitNeed {
  return { itemId, storeId, who: 'inspector', dueOn: dayAt(due), overdue, jobs: [] };
}

const visits = (...needs: VisitNeed[]) =>
  planVisits(needs, TERMS).visits.map(({ storeId, on, itemIds }) => ({ storeId, on, itemIds }));

describe('the list of visits', () => {
  it('runs by day, and through the stores of a day by their numbers', () => {
    expect(visits(need(1, 9, 20), need(2, 3, 20), need(3, 5, 4))).toEqual([
      { storeId: 5, on: dayAt(4), itemIds: [3] },
      { storeId: 3, on: dayAt(20), itemIds: [2] },
      { storeId: 9, on: dayAt(20), itemIds: [1] },
    ]);
  });

  it('names the items of a visit by their numbers, whichever falls due first', () => {
    expect(visits(need(7, 1, 10), need(12, 1, 11), need(4, 1, 12))).toEqual([
      { storeId: 1, on: dayAt(10), itemIds: [4, 7, 12] },
    ]);
  });

  it('begins today for what may no longer be used, though its due day lies ahead', () => {
    expect(visits(need(1, 1, 30, true))).toEqual([{ storeId: 1, on: dayAt(0), itemIds: [1] }]);
  });
});
