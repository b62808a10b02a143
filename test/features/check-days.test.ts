import { describe, expect, it } from 'vitest';
import { countedDay } from '../../src/checks/counted-day.js';

/** Offsets from UTC by the IANA time zone database: London +1 in summer, Auckland +13 in summer, Honolulu -10 all year. */
const [london, auckland, honolulu] = ['Europe/London', 'Pacific/Auckland', 'Pacific/Honolulu'];

const day = (checkedAt: string, receivedAt: string, timeZone = 'Europe/London') =>
  countedDay(checkedAt, { receivedAt, timeZone });

describe('the day a check counts for', () => {
  it.each([
    ['just before midnight at the store', '2026-07-31T22:59:59.999Z', london, '2026-07-31'],
    ['at midnight at the store', '2026-07-31T23:00:00.000Z', london, '2026-08-01'],
    ['at the end of February', '2028-02-28T23:59:59.000Z', london, '2028-02-28'],
    ['on the leap day', '2028-02-29T00:00:00.000Z', london, '2028-02-29'],
    ['at the end of the year, further east', '2026-12-31T10:59:59.999Z', auckland, '2026-12-31'],
    ['in the new year, further east', '2026-12-31T11:00:00.000Z', auckland, '2027-01-01'],
    ['further west', '2027-01-01T09:59:59.999Z', honolulu, '2026-12-31'],
  ])('is that of the store %s', (_, moment, zone, expected) => {
    expect(day(moment, moment, zone)).toEqual({ day: expected, checkedAt: moment, clockDoubtful: false });
  });

  it.each(['2026-11-25T07:30:00+00:00', '2026-11-25T20:30:00+13:00', '2026-11-24T21:30:00-10:00'])(
    'is the same whatever zone the device writes: %s',
    (moment) => {
      expect(day(moment, '2026-11-25T07:31:00.000Z')).toEqual({
        day: '2026-11-25',
        checkedAt: '2026-11-25T07:30:00.000Z',
        clockDoubtful: false,
      });
    },
  );

  it('is the day of the check for one that waited 36 hours, and of receipt for one that waited longer', () => {
    const received = '2026-11-26T19:30:00.000Z';
    expect(day('2026-11-25T07:30:00.000Z', received)).toMatchObject({
      day: '2026-11-25',
      clockDoubtful: false,
    });
    expect(day('2026-11-25T07:29:59.999Z', received)).toMatchObject({
      day: '2026-11-26',
      clockDoubtful: true,
    });
  });

  it('is the day of receipt for a device ten minutes ahead or more', () => {
    const received = '2026-11-25T23:55:00.000Z';
    expect(day('2026-11-26T00:05:00.000Z', received)).toMatchObject({
      day: '2026-11-25',
      clockDoubtful: false,
    });
    expect(day('2026-11-26T00:05:00.001Z', received)).toMatchObject({
      day: '2026-11-25',
      clockDoubtful: true,
    });
    expect(day('2026-11-26T23:55:00.000Z', received)).toMatchObject({
      day: '2026-11-25',
      clockDoubtful: true,
    });
  });

  it('keeps the moment that the device gave, to the millisecond', () => {
    expect(day('2026-11-25T07:30Z', '2026-11-25T07:30:00.000Z').checkedAt).toBe('2026-11-25T07:30:00.000Z');
    expect(day('2026-11-25T07:30:01.987654Z', '2026-11-25T07:31:00.000Z').checkedAt).toBe(
      '2026-11-25T07:30:01.987Z',
    );
  });
});
