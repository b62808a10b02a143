import fc from 'fast-check';
import { DateTime, IANAZone } from 'luxon';
import { describe, expect, it } from 'vitest';
import { toDay } from '../../src/rules/calendar/day.js';
import { digestInstant, isDigestDay } from '../../src/rules/reminders/digest-time.js';
import { anyCalendar, dayAt, worksOn } from './reminders-example.js';

const ZONES = [
  'Europe/London',
  'America/St_Johns',
  'Australia/Lord_Howe',
  'America/New_York',
  'Pacific/Chatham',
  'Europe/Berlin',
];

/**
 * The instant by luxon's offsets alone: the earliest at which the clock of the zone shows that time or, when it never
 * does, the time read by the offset that held before the clock went forward (RFC 5545 section 3.3.5).
 */
function byOffsets(day: string, time: string, zone: string): string {
  const shown = DateTime.fromISO(`${day}T${time}`, { zone: 'utc' }).toMillis();
  const offsetAt = (millis: number) => IANAZone.create(zone).offset(millis);
  const before = offsetAt(shown - 36 * 3_600_000);
  const after = offsetAt(shown + 36 * 3_600_000);
  const real = [before, after]
    .map((minutes) => ({ minutes, at: shown - minutes * 60_000 }))
    .filter(({ minutes, at }) => offsetAt(at) === minutes)
    .map(({ at }) => at);
  const at = real.length > 0 ? Math.min(...real) : shown - before * 60_000;
  return DateTime.fromMillis(at, { zone: 'utc' }).toISO() ?? '';
}

describe('the instant of a digest', () => {
  // Clock changes of 2026 by the rules of each place: US and Newfoundland second Sunday of March and first of November
  // at 02:00, EU and UK last Sunday of March and October at 01:00 UTC, Lord Howe by half an hour on the first Sunday of
  // October and April at 02:00, Chatham on the last Sunday of September and the first of April at 02:45 standard time.
  it.each([
    ['America/New_York', '2026-03-08', '02:30', '2026-03-08T07:30:00.000Z', 'no such time: 03:30'],
    ['America/New_York', '2026-11-01', '01:30', '2026-11-01T05:30:00.000Z', 'twice: the first'],
    ['America/New_York', '2026-11-01', '02:30', '2026-11-01T07:30:00.000Z', 'once'],
    ['America/St_Johns', '2026-03-08', '02:30', '2026-03-08T06:00:00.000Z', 'no such time: 03:30'],
    ['America/St_Johns', '2026-11-01', '01:30', '2026-11-01T04:00:00.000Z', 'twice: the first'],
    ['Europe/Berlin', '2026-03-29', '02:30', '2026-03-29T01:30:00.000Z', 'no such time: 03:30'],
    ['Europe/Berlin', '2026-10-25', '02:30', '2026-10-25T00:30:00.000Z', 'twice: the first'],
    ['Europe/London', '2026-03-29', '01:30', '2026-03-29T01:30:00.000Z', 'no such time: 02:30'],
    ['Europe/London', '2026-10-25', '01:30', '2026-10-25T00:30:00.000Z', 'twice: the first'],
    ['Australia/Lord_Howe', '2026-10-04', '02:15', '2026-10-03T15:45:00.000Z', 'no such time: 02:45'],
    ['Australia/Lord_Howe', '2026-04-05', '01:45', '2026-04-04T14:45:00.000Z', 'twice: the first'],
    ['Pacific/Chatham', '2026-09-27', '03:00', '2026-09-26T14:15:00.000Z', 'no such time: 04:00'],
    ['Pacific/Chatham', '2026-04-05', '03:00', '2026-04-04T13:15:00.000Z', 'twice: the first'],
    ['Europe/London', '2026-01-31', '06:00', '2026-01-31T06:00:00.000Z', 'the last of January'],
    ['America/New_York', '2028-02-29', '06:00', '2028-02-29T11:00:00.000Z', 'a leap day'],
    ['Pacific/Chatham', '2028-02-29', '00:00', '2028-02-28T10:15:00.000Z', 'a leap day begins'],
  ])('in %s on %s at %s is %s (%s)', (zone, day, time, instant) => {
    expect(byOffsets(day, time, zone)).toBe(instant);
    expect(digestInstant(toDay(day), time, zone)).toBe(instant);
  });

  it('is what luxon makes of any day and time in six zones, and within the day or pushed on by an hour', () => {
    const anyTime = fc
      .integer({ min: 0, max: 1439 })
      .map(
        (minute) =>
          `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`,
      );
    fc.assert(
      fc.property(
        fc.constantFrom(...ZONES),
        fc.integer({ min: 0, max: 7300 }),
        anyTime,
        (zone, index, time) => {
          const instant = digestInstant(dayAt(index), time, zone);
          expect(instant).toBe(byOffsets(dayAt(index), time, zone));
          expect(instant).toHaveLength(24);
          const local = DateTime.fromISO(instant, { zone });
          const minutesOn =
            local.hour * 60 + local.minute - Number(time.slice(0, 2)) * 60 - Number(time.slice(3));
          expect(local.toISODate()).toBe(dayAt(index));
          expect([0, 30, 60]).toContain(minutesOn);
        },
      ),
      { numRuns: 2000 },
    );
  });

  it('comes day by day on every night of a clock change, never twice and never left out', () => {
    for (const zone of ZONES)
      for (const time of ['00:30', '01:30', '02:30', '03:15', '23:59']) {
        const instants = Array.from({ length: 400 }, (_, index) =>
          DateTime.fromISO(digestInstant(dayAt(index), time, zone)).toMillis(),
        );
        const hours = instants.slice(1).map((at, index) => (at - (instants[index] ?? 0)) / 3_600_000);
        expect(Math.min(...hours)).toBeGreaterThanOrEqual(23);
        expect(Math.max(...hours)).toBeLessThanOrEqual(25);
      }
  });

  it.each([
    ['06:00', 'Europe/Nowhere'],
    ['24:30', 'Europe/London'],
    ['six', 'Europe/London'],
  ])('refuses %s in %s', (time, zone) => {
    expect(() => digestInstant(toDay('2026-01-31'), time, zone)).toThrow(RangeError);
  });
});

describe('the day of a digest', () => {
  it('once a week is the first working day of the ISO week, by luxon', () => {
    fc.assert(
      fc.property(anyCalendar(), fc.integer({ min: 20, max: 780 }), (calendar, index) => {
        const monday = index - ((new Date(`${dayAt(index)}T00:00:00Z`).getUTCDay() + 6) % 7);
        const first = [0, 1, 2, 3, 4, 5, 6].map((n) => monday + n).find((n) => worksOn(n, calendar));
        expect(isDigestDay('weekly', dayAt(index), calendar)).toBe(first === index);
        expect(DateTime.fromISO(dayAt(monday)).weekday).toBe(1);
      }),
    );
  });

  it('is any day for the others, because gear out on a job is told of on free days too', () => {
    const saturday = toDay('2026-11-28');
    const calendar = { workDays: [1, 2, 3, 4, 5], holidays: [] };
    expect(isDigestDay('daily', saturday, calendar)).toBe(true);
    expect(isDigestDay('overdueOnly', saturday, calendar)).toBe(true);
    expect(isDigestDay('weekly', saturday, calendar)).toBe(false);
  });
});
