import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { VisitNeed } from '../../src/rules/reminders/visit-need.js';
import { planVisits } from '../../src/rules/reminders/visits.js';
import type { WorkCalendar } from '../../src/rules/reminders/work-calendar.js';
import { dayAt, worksOn } from './reminders-example.js';

/** Day 0 of the examples is Friday 1 January 2027. */
const TODAY = 0;
const HORIZON = 12;
const MOST_DAYS_EARLY = 5;

interface Example {
  readonly due: number;
  readonly jobs: readonly { readonly from: number; readonly days: number; readonly out: boolean }[];
}

const anyItem = (withJobs: boolean): fc.Arbitrary<Example> =>
  fc.record({
    due: fc.integer({ min: -3, max: HORIZON }),
    jobs: withJobs
      ? fc.oneof(
          fc.constant([]),
          fc
            .record({ from: fc.integer({ min: -2, max: 8 }), days: fc.integer({ min: 1, max: 5 }) })
            .map((job) => [{ ...job, out: job.from <= TODAY }]),
        )
      : fc.constant([]),
  });

const anyWeek: fc.Arbitrary<WorkCalendar> = fc.record({
  workDays: fc.uniqueArray(fc.integer({ min: 1, max: 7 }), { minLength: 2, maxLength: 7 }),
  holidays: fc.uniqueArray(fc.integer({ min: 0, max: HORIZON }).map(dayAt), { maxLength: 3 }),
});

function asNeed({ due, jobs }: Example, itemId: number): VisitNeed {
  return {
    itemId,
    storeId: 1,
    who: 'inspector',
    dueOn: dayAt(due),
    overdue: due < TODAY,
    jobs: jobs.map(({ from, days, out }, n) => ({
      jobId: itemId * 10 + n,
      from: dayAt(from),
      to: dayAt(from + days - 1),
      out,
    })),
  };
}

/** The working days on which an item can be examined in time, tried one by one; the last of them may be early. */
function daysInTime({ due, jobs }: Example, calendar: WorkCalendar): number[] {
  if (due < TODAY) return [];
  const stopped = jobs.filter(({ from, days, out }) => !out && from + days - 1 > due);
  const days = [];
  for (let day = TODAY; day <= due; day += 1) {
    const isAway = jobs.some((job) => !stopped.includes(job) && day >= job.from && day < job.from + job.days);
    const isTooLate = stopped.some(({ from }) => day >= from);
    if (worksOn(day, calendar) && !isAway && !isTooLate) days.push(day);
  }
  const last = days.at(-1);
  return days.filter((day) => day >= due - MOST_DAYS_EARLY || day === last);
}

function firstWorkDay(calendar: WorkCalendar): number {
  let day = TODAY;
  while (!worksOn(day, calendar)) day += 1;
  return day;
}

/** The size of the smallest set of days that meets every list, by trying every set. */
function fewestDays(lists: readonly (readonly number[])[]): number {
  const all = [...new Set(lists.flat())];
  let fewest = all.length;
  for (let set = 0; set < 2 ** all.length; set += 1) {
    const chosen = all.filter((_, n) => Math.floor(set / 2 ** n) % 2 === 1);
    if (chosen.length < fewest && lists.every((days) => days.some((day) => chosen.includes(day))))
      fewest = chosen.length;
  }
  return fewest;
}

function plan(items: readonly VisitNeed[], calendar: WorkCalendar) {
  const terms = { today: dayAt(TODAY), calendarOf: () => calendar, mostDaysEarly: MOST_DAYS_EARLY };
  return planVisits(items, terms);
}

describe('visits', () => {
  // Points that pierce intervals: earliest end first is optimal (a textbook exercise on greedy algorithms, e.g. in
  // Cormen, Leiserson, Rivest and Stein, from memory). Checked here against every set of days.
  it('are the fewest that reach every item in time', () => {
    fc.assert(
      fc.property(fc.array(anyItem(false), { minLength: 1, maxLength: 7 }), anyWeek, (items, calendar) => {
        const lists = items.map((item) => {
          const days = daysInTime(item, calendar);
          return days.length > 0 ? days : [firstWorkDay(calendar)];
        });
        const { visits, notAtStore } = plan(items.map(asNeed), calendar);
        expect(visits).toHaveLength(fewestDays(lists));
        expect(notAtStore).toEqual([]);
        expect(visits.flatMap(({ itemIds }) => itemIds).sort()).toEqual(items.map((_, n) => n));
        for (const { on, itemIds } of visits)
          for (const itemId of itemIds) expect(lists[itemId]?.map(dayAt)).toContain(on);
      }),
      { numRuns: 300 },
    );
  });

  it('fall on working days on which the item is in its store, each item in one visit or out until due', () => {
    fc.assert(
      fc.property(fc.array(anyItem(true), { minLength: 1, maxLength: 6 }), anyWeek, (items, calendar) => {
        const { visits, notAtStore } = plan(items.map(asNeed), calendar);
        const seen = [...visits.flatMap(({ itemIds }) => itemIds), ...notAtStore].sort((a, b) => a - b);
        expect(seen).toEqual(items.map((_, n) => n));
        for (const { on, itemIds } of visits)
          for (const itemId of itemIds) {
            const item = items[itemId];
            if (item === undefined) throw new Error(`no item ${itemId}`);
            const inTime = daysInTime(item, calendar).map(dayAt);
            if (inTime.length > 0) expect(inTime).toContain(on);
            const isOutOn = item.jobs.some(
              ({ from, days, out }) => out && on >= dayAt(from) && on < dayAt(from + days),
            );
            expect(isOutOn).toBe(false);
            expect(worksOn((Date.parse(on) - Date.parse(dayAt(0))) / 86_400_000, calendar)).toBe(true);
          }
        for (const itemId of notAtStore) expect(items[itemId]?.jobs.some(({ out }) => out)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  it('with jobs in between are no more than the last stretch of each item needs', () => {
    fc.assert(
      fc.property(fc.array(anyItem(true), { minLength: 1, maxLength: 6 }), anyWeek, (items, calendar) => {
        const reached = items.filter((item) => daysInTime(item, calendar).length > 0);
        const inTime = reached.filter(
          ({ due, jobs }) => !jobs.some((job) => job.out && job.from + job.days > due),
        );
        const stretches = inTime.map((item) => lastStretch(daysInTime(item, calendar), item));
        expect(plan(inTime.map(asNeed), calendar).visits.length).toBeLessThanOrEqual(fewestDays(stretches));
      }),
      { numRuns: 200 },
    );
  });

  const EVERY_DAY: WorkCalendar = { workDays: [1, 2, 3, 4, 5, 6, 7], holidays: [] };
  const NEED: VisitNeed = {
    itemId: 1,
    storeId: 1,
    who: 'inspector',
    dueOn: dayAt(10),
    overdue: false,
    jobs: [],
  };
  const job = (jobId: number, from: number, to: number, out = false) => ({
    jobId,
    from: dayAt(from),
    to: dayAt(to),
    out,
  });

  it('come as late as they may, and at once to what is overdue', () => {
    const overdue = { ...NEED, itemId: 2, dueOn: dayAt(-9), overdue: true };
    expect(plan([NEED, overdue], EVERY_DAY).visits).toEqual([
      { storeId: 1, who: 'inspector', on: dayAt(0), itemIds: [2], savesJobIds: [] },
      { storeId: 1, who: 'inspector', on: dayAt(10), itemIds: [1], savesJobIds: [] },
    ]);
    // 1 January 2027 is a Friday and here a holiday: the next working day is Monday.
    const closed = { workDays: [1, 2, 3, 4, 5], holidays: [dayAt(0)] };
    expect(plan([overdue], closed).visits.map(({ on }) => on)).toEqual([dayAt(3)]);
  });

  it('come before the first job that the item would stop, and say that they save it', () => {
    const stopped = { ...NEED, jobs: [job(5, 7, 11), job(6, 12, 13)] };
    expect(plan([stopped], EVERY_DAY).visits).toMatchObject([{ on: dayAt(6), savesJobIds: [5, 6] }]);
    // In date through its due day: a job that ends on it is not at stake, but the item is away.
    const inDate = { ...NEED, jobs: [job(5, 7, 10)] };
    expect(plan([inDate], EVERY_DAY).visits).toMatchObject([{ on: dayAt(6), savesJobIds: [] }]);
  });

  it('save a job with the last of its items, and not when one of them cannot be examined before it', () => {
    const late = { ...NEED, itemId: 2, storeId: 2, dueOn: dayAt(12), jobs: [job(5, 9, 13)] };
    const early = { ...NEED, itemId: 1, dueOn: dayAt(3), jobs: [job(5, 9, 13)] };
    expect(plan([late, early], EVERY_DAY).visits).toEqual([
      { storeId: 1, who: 'inspector', on: dayAt(3), itemIds: [1], savesJobIds: [] },
      { storeId: 2, who: 'inspector', on: dayAt(8), itemIds: [2], savesJobIds: [5] },
    ]);
    const outTillThen = { ...NEED, itemId: 3, jobs: [job(4, -3, 10, true), job(5, 9, 13)] };
    expect(plan([late, early, outTillThen], EVERY_DAY)).toMatchObject({
      visits: [{ savesJobIds: [] }, { savesJobIds: [] }],
      notAtStore: [3],
    });
  });

  it('do not save a job that has begun', () => {
    const overdue = { ...NEED, dueOn: dayAt(-1), overdue: true };
    expect(plan([{ ...overdue, jobs: [job(5, 0, 4)] }], EVERY_DAY).visits).toMatchObject([
      { savesJobIds: [] },
    ]);
    expect(plan([{ ...overdue, jobs: [job(5, 1, 4)] }], EVERY_DAY).visits).toMatchObject([
      { savesJobIds: [5] },
    ]);
  });

  it('do not reach what is out until it is due, nor overdue gear that is out', () => {
    expect(plan([{ ...NEED, jobs: [job(5, -1, 10, true)] }], EVERY_DAY).notAtStore).toEqual([1]);
    expect(plan([{ ...NEED, jobs: [job(5, -9, -1, true)] }], EVERY_DAY).notAtStore).toEqual([1]);
    const overdue = { ...NEED, dueOn: dayAt(-1), overdue: true, jobs: [job(5, -3, 2, true)] };
    expect(plan([overdue], EVERY_DAY)).toEqual({ visits: [], notAtStore: [1] });
    expect(plan([{ ...NEED, jobs: [job(5, -1, 9, true)] }], EVERY_DAY).visits).toMatchObject([
      { on: dayAt(10) },
    ]);
  });

  it('come to gear that is back only after its job was to begin on the first day that it is there', () => {
    const backToBack = { ...NEED, jobs: [job(5, -1, 3, true), job(6, 4, 12)] };
    expect(plan([backToBack], EVERY_DAY).visits).toMatchObject([{ on: dayAt(4), savesJobIds: [] }]);
  });

  it('are made by a competent person when one of the items asks for one, each store by itself', () => {
    const other = { ...NEED, itemId: 2, who: 'competentPerson' as const };
    const elsewhere = { ...NEED, itemId: 3, storeId: 2 };
    expect(plan([elsewhere, other, NEED], EVERY_DAY).visits).toMatchObject([
      { storeId: 1, who: 'competentPerson', itemIds: [1, 2] },
      { storeId: 2, who: 'inspector', itemIds: [3] },
    ]);
  });

  it('find overdue gear in its store, though a job that ends today was promised it', () => {
    const overdue = { ...NEED, dueOn: dayAt(-2), overdue: true, jobs: [job(5, -1, 0)] };
    expect(plan([overdue], EVERY_DAY).visits).toMatchObject([{ on: dayAt(0), savesJobIds: [] }]);
  });

  it('take an item as late as they can', () => {
    const first = { ...NEED, dueOn: dayAt(6) };
    const second = { ...NEED, itemId: 2, dueOn: dayAt(12), jobs: [job(5, 9, 14)] };
    const either = { ...NEED, itemId: 3, dueOn: dayAt(11) };
    expect(plan([first, second, either], EVERY_DAY).visits).toMatchObject([
      { on: dayAt(6), itemIds: [1] },
      { on: dayAt(8), itemIds: [2, 3] },
    ]);
  });

  it('take an item no earlier than agreed before its due day', () => {
    const later = { ...NEED, itemId: 2, dueOn: dayAt(10 + MOST_DAYS_EARLY) };
    const muchLater = { ...NEED, itemId: 3, dueOn: dayAt(11 + MOST_DAYS_EARLY) };
    expect(plan([NEED, later, muchLater], EVERY_DAY).visits.map(({ itemIds }) => itemIds)).toEqual([
      [1, 2],
      [3],
    ]);
  });
});

/** The days after the last on which a job keeps the item away. */
function lastStretch(days: readonly number[], { jobs }: Example): number[] {
  const last = days.at(-1) ?? 0;
  const awayUntil = Math.max(
    -Infinity,
    ...jobs.map(({ from, days: length }) => from + length - 1).filter((to) => to < last),
  );
  return days.filter((day) => day > awayUntil);
}
