import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { addDays, addMonths, daysBetween, earliest, isDay, toDay } from '../../src/rules/calendar/day.js';
import { golden } from './golden.js';

const months = golden<{ from: string; months: number; to: string; source: string }[]>('months');

const anyDay = fc
  .integer({ min: 0, max: 73_000 })
  .map((n) => DateTime.utc(1950, 1, 1).plus({ days: n }).toISODate() ?? '')
  .map(toDay);

describe('isDay', () => {
  it.each(['1900-01-01', '2999-12-31', '2024-02-29', '2000-02-29', '2026-04-30', '2026-12-31', '2026-01-01'])(
    '%s exists',
    (text) => {
      expect(isDay(text)).toBe(true);
      expect(toDay(text)).toBe(text);
    },
  );

  it.each([
    '1899-12-31',
    '3000-01-01',
    '2026-02-29',
    '2100-02-29',
    '2026-02-30',
    '2026-04-31',
    '2026-11-31',
    '2026-13-01',
    '2026-00-10',
    '2026-01-00',
    '2026-1-1',
    '2026-01-01T00:00',
    ' 2026-01-01',
    '2026-01-01\n',
    '01/02/2026',
    '',
  ])('%j does not', (text) => {
    expect(isDay(text)).toBe(false);
    expect(() => toDay(text)).toThrow(RangeError);
  });

  it('is named in the error with the form it should have', () => {
    expect(() => toDay('2026-02-30')).toThrow(/'2026-02-30'.*YYYY-MM-DD/);
  });
});

describe('addMonths', () => {
  it.each(months)('$from and $months months by $source', ({ from, months: count, to }) => {
    expect(addMonths(toDay(from), count)).toBe(to);
  });

  it('is counted from the anchor, never from a clamped result', () => {
    const anchor = toDay('2025-08-31');
    expect(addMonths(anchor, 12)).toBe('2026-08-31');
    expect(addMonths(addMonths(anchor, 6), 6)).toBe('2026-08-28');
  });

  // ISO 8601:2004 4.1.2.4 (from memory): a year has four digits, beyond 9999 it is expanded and signed.
  it.each([
    ['1900-01-31', -1, '1899-12-31'],
    ['2999-12-31', 2, '3000-02-28'],
    ['1900-05-15', -12_000, '0900-05-15'],
    ['2999-05-15', 96_000, '+010999-05-15'],
  ])('%s and %d months goes beyond the days that can be written here: %s', (from, count, to) => {
    expect(addMonths(toDay(from), count)).toBe(to);
  });

  it.each([0.5, 1 / 3, Number.NaN, Number.POSITIVE_INFINITY])('knows no %d months', (count) => {
    expect(() => addMonths(toDay('2026-01-15'), count)).toThrow(RangeError);
  });

  it('agrees with a general-purpose calendar library on thousands of days', () => {
    fc.assert(
      fc.property(anyDay, fc.integer({ min: -60, max: 240 }), (day, count) => {
        expect(addMonths(day, count)).toBe(
          DateTime.fromISO(day, { zone: 'utc' }).plus({ months: count }).toISODate(),
        );
      }),
      { numRuns: 5000 },
    );
  });
});

describe('addDays and daysBetween', () => {
  it('cross months, leap days and years', () => {
    expect(addDays(toDay('2026-02-28'), 1)).toBe('2026-03-01');
    expect(addDays(toDay('2028-02-28'), 1)).toBe('2028-02-29');
    expect(addDays(toDay('2026-01-01'), -1)).toBe('2025-12-31');
    expect(daysBetween(toDay('2026-02-28'), toDay('2026-03-01'))).toBe(1);
    expect(daysBetween(toDay('2026-03-01'), toDay('2026-02-28'))).toBe(-1);
    expect(daysBetween(toDay('2026-03-01'), toDay('2026-03-01'))).toBe(0);
  });

  it('agree with a general-purpose calendar library', () => {
    fc.assert(
      fc.property(anyDay, fc.integer({ min: -4000, max: 4000 }), (day, count) => {
        const later = DateTime.fromISO(day, { zone: 'utc' }).plus({ days: count }).toISODate() ?? '';
        expect(addDays(day, count)).toBe(later);
        expect(daysBetween(day, toDay(later))).toBe(count);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('earliest', () => {
  it('is the first day, or none of none', () => {
    expect(earliest([toDay('2026-03-01'), toDay('2026-02-28'), toDay('2027-01-01')])).toBe('2026-02-28');
    expect(earliest([])).toBeUndefined();
  });
});
