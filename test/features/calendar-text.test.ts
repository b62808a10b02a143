import { describe, expect, it } from 'vitest';
import { calendarText } from '../../src/reminders/feed/calendar-text.js';
import type { FeedDay } from '../../src/reminders/feed/feed-day.js';
import type { DiaryEntry } from '../../src/reminders/diary/diary-entry.js';
import { toDay } from '../../src/rules/calendar/day.js';
import { expectSoundText, readCalendar, type ReadEvent } from '../support/calendar-checks.js';

const STORE = { id: 7, name: 'Quayside', timeZone: 'Europe/London' };

function entry(tag: string, on: string, jobs: readonly string[] = []): DiaryEntry {
  const stops = jobs.map((reference, n) => ({
    ...{ jobId: n, reference, out: false },
    from: toDay('2028-03-01'),
    to: toDay('2028-03-09'),
  }));
  return {
    ...{
      itemId: 1,
      tag,
      kind: 'sling',
      storeId: 7,
      storeName: 'Quayside',
      overdue: false,
      jobs: stops,
      stops,
    },
    today: toDay('2028-01-01'),
    dueOn: toDay(on),
    reasons: [{ why: 'inspection', type: 'thoroughExamination', dueOn: toDay(on), source: 'x' }],
    who: 'competentPerson',
  };
}

function written(
  on: string,
  entries: readonly DiaryEntry[],
  other: Partial<FeedDay> = {},
): [string, ReadEvent] {
  const day: FeedDay = {
    ...{ store: STORE, key: `due-7-${on}`, kind: 'due', on: toDay(on), today: toDay('2028-01-01'), entries },
    sequence: 3,
    changedAt: '2027-12-30T08:15:30.000Z',
    ...other,
  };
  const text = calendarText([day], {
    name: 'Gear due',
    address: 'http://gear.example:3000',
    nameOf: () => 'webbing sling',
  });
  expectSoundText(text);
  const [event] = readCalendar(text).values();
  if (!event) throw new Error('no event');
  return [text, event];
}

describe('the text of a calendar', () => {
  // RFC 5545 section 3.6.1: DTEND of a whole day is the day after it, which does not belong to it.
  it.each([
    ['2028-02-28', '2028-02-29'],
    ['2028-02-29', '2028-03-01'],
    ['2027-02-28', '2027-03-01'],
    ['2028-01-31', '2028-02-01'],
    ['2027-12-31', '2028-01-01'],
    // Nights on which clocks change somewhere.
    ['2028-03-26', '2028-03-27'],
    ['2028-10-29', '2028-10-30'],
  ])('of %s ends on %s', (on, end) => {
    expect(written(on, [entry('SL-1', on)])[1]).toMatchObject({ start: on, end, isDate: true });
  });

  it('says in one line what falls due and what it stops, and in the text what is due of each', () => {
    const two = [entry('SL-1', '2028-02-29', ['LM-2047']), entry('SL-2', '2028-02-29')];
    const [, event] = written('2028-02-29', two);
    expect(event).toMatchObject({
      uid: 'due-7-2028-02-29@gear.example',
      summary: '2 items fall due, Quayside (stops job LM-2047)',
      sequence: 3,
      stamp: '2027-12-30T08:15:30Z',
    });
    expect(event.description.split('\n')).toEqual([
      'SL-1 (webbing sling): thorough examination due by 29 February 2028 (stops job LM-2047)',
      'SL-2 (webbing sling): thorough examination due by 29 February 2028',
      'http://gear.example:3000/diary?storeId=7',
    ]);
  });

  // RFC 5545 section 3.8.8.2: a program ignores what starts with X- and is not its own.
  it('holds no property of a single program, and loses nothing that was written', () => {
    const [text, { description }] = written('2028-02-28', [entry('X-RAY-1', '2028-02-28')]);
    const own = text.split('\r\n').filter((line) => line.startsWith('X-'));
    expect(own).toEqual(['X-WR-CALNAME:Gear due', 'X-PUBLISHED-TTL:PT4H']);
    expect(description).toContain('X-RAY-1');
  });

  it('counts jobs beyond three, and says of a past day that it is still to be done', () => {
    const many = [entry('SL-1', '2027-12-01', ['A', 'B', 'C', 'D', 'E'])];
    expect(written('2027-12-01', many)[1].summary).toBe(
      '1 item was due and still is, Quayside (stops jobs A, B, C and 2 others)',
    );
    const overdue = written('2028-01-01', many, { kind: 'overdue' })[1];
    expect(overdue.summary).toMatch(/^1 item overdue, Quayside/);
  });

  it('names 20 items of 5,000 and says how many more', () => {
    const many = Array.from({ length: 5_000 }, (_, n) => entry(`SL-${n}`, '2028-02-29'));
    const [text, event] = written('2028-02-29', many);
    const lines = event.description.split('\n');
    expect(event.summary).toBe('5000 items fall due, Quayside');
    expect(lines).toHaveLength(22);
    expect(lines[20]).toBe('and 4980 more items: see the due diary');
    expect(text.length).toBeLessThan(4_000);
  });

  // RFC 5545 section 3.3.11 and 3.1: escaped, folded between characters, and whole again for the reader.
  it.each([
    'a,b;c\\d',
    'ends in a backslash\\',
    'two\nlines',
    'two\r\nlines',
    '\\n is no line end',
    'BEGIN:VEVENT\r\nUID:made up',
    'é'.repeat(120),
    '🏗'.repeat(60),
    `${'x'.repeat(66)}é${'y'.repeat(80)}`,
    '東京の倉庫'.repeat(20),
    'e\u0301'.repeat(70),
  ])('gives back %j', (name) => {
    const [text, event] = written('2028-02-29', [entry(name, '2028-02-29')], { store: { ...STORE, name } });
    const read = name.replaceAll('\r\n', '\n');
    expect(event.summary).toBe(`1 item falls due, ${read}`);
    expect(event.description.startsWith(`${read} (webbing sling)`)).toBe(true);
    expect(text.match(/^BEGIN:VEVENT/gm)).toHaveLength(1);
    const named = calendarText([], { name, address: 'http://gear.example', nameOf: () => '' });
    expectSoundText(named);
    expect(readCalendar(named).size).toBe(0);
  });

  it('marks a day on which nothing falls due any more as cancelled', () => {
    const [, event] = written('2028-02-29', []);
    // RFC 5545 section 3.8.1.11.
    expect(event).toMatchObject({ status: 'CANCELLED', summary: 'Nothing falls due any more, Quayside' });
  });
});
