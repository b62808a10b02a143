import { describe, expect, it } from 'vitest';
import { toDay } from '../../src/rules/calendar/day.js';
import type { VisitJob, VisitNeed } from '../../src/rules/reminders/visit-need.js';
import { jobsAtStake } from '../../src/rules/reminders/visit-need.js';
import { planVisits } from '../../src/rules/reminders/visits.js';

// May 2027 begins on a Saturday; every day is a working day here, so that only the jobs decide.
const TODAY = toDay('2027-05-03');
const may = (day: number) => toDay(`2027-05-${String(day).padStart(2, '0')}`);
const job = (jobId: number, from: number, to: number, out = false): VisitJob => ({
  jobId,
  from: may(from),
  to: may(to),
  out,
});

function need(itemId: number, dueOn: number, jobs: VisitJob[], storeId = 1): VisitNeed {
  return { itemId, storeId, who: 'inspector', dueOn: may(dueOn), overdue: may(dueOn) < TODAY, jobs };
}

function plan(needs: VisitNeed[]) {
  const everyDay = { workDays: [1, 2, 3, 4, 5, 6, 7], holidays: [] };
  return planVisits(needs, { today: TODAY, calendarOf: () => everyDay, mostDaysEarly: 1 });
}

describe('the jobs that a visit saves', () => {
  it('are those that its items would stop, by number', () => {
    const { visits } = plan([need(2, 12, [job(9, 11, 14)]), need(1, 12, [job(5, 11, 20), job(7, 22, 23)])]);
    expect(visits).toEqual([
      { storeId: 1, who: 'inspector', on: '2027-05-10', itemIds: [1, 2], savesJobIds: [5, 7, 9] },
    ]);
  });

  it('stand on the last visit that they wait for', () => {
    const late = need(1, 19, [job(7, 20, 24)]);
    const early = need(2, 8, [job(7, 20, 24)]);
    for (const needs of [
      [late, early],
      [early, late],
    ])
      expect(plan(needs).visits.map(({ on, savesJobIds }) => [on, savesJobIds])).toEqual([
        ['2027-05-08', []],
        ['2027-05-19', [7]],
      ]);
  });

  it('are none while one of their items is reached by no visit in time', () => {
    const onAnotherJob = need(1, 19, [job(3, 1, 19, true), job(7, 20, 24)]);
    const inStore = need(2, 19, [job(7, 20, 24)]);
    for (const needs of [
      [onAnotherJob, inStore],
      [inStore, onAnotherJob],
    ]) {
      const { visits, notAtStore } = plan(needs);
      expect(notAtStore).toEqual([1]);
      expect(visits.flatMap(({ savesJobIds }) => savesJobIds)).toEqual([]);
    }
  });

  it('are not those that have begun when it comes', () => {
    const { visits } = plan([need(1, 2, [job(7, 3, 9)])]);
    expect(visits).toMatchObject([{ on: '2027-05-03', savesJobIds: [] }]);
  });

  it('are at stake only while they are not over', () => {
    expect(jobsAtStake(need(1, 2, [job(6, 1, 2), job(7, 1, 3)]), TODAY).map(({ jobId }) => jobId)).toEqual([
      7,
    ]);
    expect(jobsAtStake(need(1, 9, [job(6, 4, 9), job(7, 4, 10)]), TODAY).map(({ jobId }) => jobId)).toEqual([
      7,
    ]);
  });
});

describe('gear that is out', () => {
  it('is expected back while its last day is not over, and not any more the day after', () => {
    expect(plan([need(1, 20, [job(3, 1, 3, true)])]).notAtStore).toEqual([]);
    expect(plan([need(1, 20, [job(3, 1, 2, true)])]).notAtStore).toEqual([1]);
  });

  it('is examined today where it is due today and in its store', () => {
    expect(plan([need(1, 3, [])]).visits).toMatchObject([{ on: '2027-05-03', itemIds: [1] }]);
  });
});
