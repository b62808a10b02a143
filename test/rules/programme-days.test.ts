import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { addDays, toDay, weekday } from '../../src/rules/calendar/day.js';
import { checkWindow } from '../../src/rules/programme/window-check.js';
import { isLocalTime, siteClock, toTicks } from '../../src/rules/programme/working-time.js';
import { addWorkDays, isWorkDay, workDayFrom, workDaysThrough } from '../../src/rules/programme/work-week.js';
import { seededRandom } from '../support/seeded-random.js';
import { tallPanels } from './programme-example.js';

const NEW_YEAR = toDay('2026-01-01');

describe('weekday', () => {
  it('is numbered from Monday as by a general-purpose calendar library (ISO 8601)', () => {
    for (let days = -800; days < 800; days += 1) {
      const day = addDays(NEW_YEAR, days);
      expect(weekday(day)).toBe(DateTime.fromISO(day).weekday);
    }
  });
});

describe('working days', () => {
  it.each([
    // 30 November 2026 is a Monday.
    { from: '2026-11-30', count: 4, week: 5, to: '2026-12-04' },
    { from: '2026-11-30', count: 5, week: 5, to: '2026-12-07' },
    { from: '2026-11-30', count: 5, week: 6, to: '2026-12-05' },
    { from: '2026-11-30', count: 6, week: 6, to: '2026-12-07' },
    { from: '2026-11-30', count: 6, week: 7, to: '2026-12-06' },
    { from: '2026-11-30', count: -1, week: 5, to: '2026-11-27' },
    { from: '2026-11-30', count: -1, week: 6, to: '2026-11-28' },
    { from: '2026-11-30', count: -1, week: 7, to: '2026-11-29' },
    { from: '2026-12-31', count: 1, week: 5, to: '2027-01-01' },
    { from: '2027-01-01', count: 1, week: 5, to: '2027-01-04' },
    { from: '2028-02-28', count: 1, week: 5, to: '2028-02-29' },
    { from: '2026-11-30', count: 0, week: 5, to: '2026-11-30' },
  ])('$count from $from in a week of $week: $to', ({ from, count, week, to }) => {
    expect(addWorkDays(toDay(from), count, week)).toBe(to);
  });

  it('are those counted on a calendar one by one', () => {
    const random = seededRandom(7);
    for (let round = 0; round < 400; round += 1) {
      const week = random.whole(5, 7);
      const from = addDays(NEW_YEAR, random.whole(-400, 400));
      const length = random.whole(0, 40);
      const span = Array.from({ length }, (_, days) => addDays(from, days));
      const worked = span.filter((day) => DateTime.fromISO(day).weekday <= week);
      expect(workDaysThrough(from, addDays(from, length - 1), week)).toBe(worked.length);
      expect(span.filter((day) => isWorkDay(day, week))).toEqual(worked);
      const [first] = worked;
      if (first === undefined) continue;
      expect(workDayFrom(from, week)).toBe(first);
      expect(worked.map((_, count) => addWorkDays(first, count, week))).toEqual(worked);
      expect(worked.map((day, count) => addWorkDays(day, -count, week))).toEqual(worked.map(() => first));
    }
  });

  it('are none where the end comes before the start', () => {
    expect(workDaysThrough(toDay('2026-12-31'), toDay('2026-12-01'), 5)).toBe(0);
  });
});

describe('working time', () => {
  const hours = tallPanels();

  it.each([
    { at: 0, edge: 'begins' as const, time: '2026-11-30T07:30' },
    { at: 0, edge: 'ends' as const, time: '2026-11-30T07:30' },
    { at: 1, edge: 'ends' as const, time: '2026-11-30T07:31' },
    { at: 18, edge: 'ends' as const, time: '2026-11-30T07:31' },
    { at: 19, edge: 'ends' as const, time: '2026-11-30T07:32' },
    { at: 8640, edge: 'ends' as const, time: '2026-11-30T15:30' },
    { at: 8639, edge: 'ends' as const, time: '2026-11-30T15:30' },
    { at: 8640, edge: 'begins' as const, time: '2026-12-01T07:30' },
    { at: 8641, edge: 'ends' as const, time: '2026-12-01T07:31' },
    { at: 5 * 8640, edge: 'ends' as const, time: '2026-12-04T15:30' },
    { at: 5 * 8640, edge: 'begins' as const, time: '2026-12-07T07:30' },
  ])('$at ticks of 1/18 minute, where something $edge, is $time', ({ at, edge, time }) => {
    expect(siteClock(hours, 18)(at, edge)).toBe(time);
  });

  it('may end at midnight, which is the next day', () => {
    const late = { ...hours, dayStartMinutes: 960 };
    expect(siteClock(late, 1)(480, 'ends')).toBe('2026-12-01T00:00');
    expect(siteClock(late, 1)(479, 'ends')).toBe('2026-11-30T23:59');
  });

  it('starts on the first day that is worked', () => {
    const sunday = { ...hours, firstWorkDay: toDay('2026-11-29') };
    expect(siteClock(sunday, 1)(0, 'begins')).toBe('2026-11-30T07:30');
    expect(siteClock({ ...sunday, workDaysPerWeek: 7 }, 1)(0, 'begins')).toBe('2026-11-29T07:30');
  });

  it('and clock time are told from each other and back', () => {
    const random = seededRandom(11);
    for (let round = 0; round < 500; round += 1) {
      const own = {
        ...hours,
        workDaysPerWeek: random.whole(5, 7),
        firstWorkDay: addDays(NEW_YEAR, random.whole(0, 60)),
      };
      const ticks = random.whole(0, 20_000) * 18;
      expect(toTicks(siteClock(own, 18)(ticks, 'begins'), 18, own)).toBe(ticks);
    }
  });

  it.each([
    '2026-11-30T07:30',
    '2028-02-29T23:59',
    '2026-11-30T00:00',
    '2026-11-30T19:09',
    '2026-11-30T20:00',
  ])('%s is a time', (text) => {
    expect(isLocalTime(text)).toBe(true);
  });

  it.each([
    '2026-11-30T7:30',
    '2026-02-29T08:00',
    '2026-11-30 07:30',
    '2026-11-30T07:30:00',
    '2026-11-30',
    '',
  ])('%j is none', (text) => {
    expect(isLocalTime(text)).toBe(false);
  });
});

describe('the window', () => {
  // Work from Thursday 3 to Monday 7 December 2026 is 3 working days; one day before, two after: 2 to 9 December.
  const work = {
    firstDay: toDay('2026-12-03'),
    lastDay: toDay('2026-12-07'),
    setUpDays: 1,
    clearDays: 2,
    workDaysPerWeek: 5,
  };

  it.each([
    { from: '2026-12-02', to: '2026-12-09', fits: true, hasDays: 6 },
    { from: '2026-12-03', to: '2026-12-09', fits: false, hasDays: 5 },
    { from: '2026-12-02', to: '2026-12-08', fits: false, hasDays: 5 },
    { from: '2026-11-28', to: '2026-12-13', fits: true, hasDays: 10 },
  ])('from $from to $to: $fits', ({ from, to, fits, hasDays }) => {
    expect(checkWindow({ ...work, window: { from: toDay(from), to: toDay(to) } })).toEqual({
      fits,
      neededDays: 6,
      hasDays,
      startsOn: '2026-12-02',
      endsOn: '2026-12-09',
    });
  });
});
