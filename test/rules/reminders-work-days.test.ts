import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toDay } from '../../src/rules/calendar/day.js';
import { isWorkDay, workDayFrom, workDayUpTo } from '../../src/rules/reminders/work-calendar.js';
import { anyCalendar, dayAt, worksOn } from './reminders-example.js';

const MONDAY_TO_FRIDAY = { workDays: [1, 2, 3, 4, 5], holidays: [] };

describe('a working day', () => {
  it('is one by its day of the week and by no holiday, as luxon counts them', () => {
    fc.assert(
      fc.property(anyCalendar(), fc.integer({ min: 0, max: 800 }), (calendar, index) => {
        expect(isWorkDay(dayAt(index), calendar)).toBe(worksOn(index, calendar));
      }),
    );
  });

  it('before or after a day is the nearest that luxon finds', () => {
    fc.assert(
      fc.property(anyCalendar(5), fc.integer({ min: 50, max: 750 }), (calendar, index) => {
        let [before, after] = [index, index];
        while (!worksOn(before, calendar)) before -= 1;
        while (!worksOn(after, calendar)) after += 1;
        // Five holidays in a place that works one day a week close it for 42 days at most.
        expect(workDayUpTo(dayAt(index), calendar)).toBe(dayAt(before));
        expect(workDayFrom(dayAt(index), calendar)).toBe(dayAt(after));
      }),
    );
  });

  // 29 February 2048 is a Saturday, 31 January 2027 a Sunday: any calendar.
  it.each([
    ['2048-02-29', '2048-02-28', '2048-03-02'],
    ['2027-01-31', '2027-01-29', '2027-02-01'],
    ['2028-02-29', '2028-02-29', '2028-02-29'],
  ])('next to %s is %s before and %s after it', (day, before, after) => {
    expect(workDayUpTo(toDay(day), MONDAY_TO_FRIDAY)).toBe(before);
    expect(workDayFrom(toDay(day), MONDAY_TO_FRIDAY)).toBe(after);
  });

  it('is sought for 60 days, then the day itself stands', () => {
    const closed = {
      workDays: [1, 2, 3, 4, 5, 6, 7],
      holidays: Array.from({ length: 60 }, (_, n) => dayAt(100 + n)),
    };
    expect(workDayFrom(dayAt(100), closed)).toBe(dayAt(160));
    expect(workDayUpTo(dayAt(159), closed)).toBe(dayAt(99));
    const longer = { ...closed, holidays: [...closed.holidays, dayAt(160), dayAt(99)] };
    expect(workDayFrom(dayAt(100), longer)).toBe(dayAt(100));
    expect(workDayUpTo(dayAt(159), longer)).toBe(dayAt(159));
  });
});
