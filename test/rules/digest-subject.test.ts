import { describe, expect, it } from 'vitest';
import { digestSubject } from '../../src/reminders/digest/digest-subject.js';
import { addDays } from '../../src/rules/calendar/day.js';
import { TODAY, diaryEntry, told } from '../support/example-mails.js';

const promised = { jobId: 8, reference: 'LM-8', from: addDays(TODAY, 8), to: addDays(TODAY, 12), out: false };
const out = { ...promised, reference: 'LM-7', from: addDays(TODAY, -2), out: true };

describe('the subject of a digest', () => {
  it.each([
    ['PL-1 due by 10 May', told(diaryEntry(1, 7))],
    ['PL-1 due by 2 June', told(diaryEntry(1, 30))],
    ['PL-1 overdue in store', told(diaryEntry(1, -1))],
    ['PL-1 still overdue in store', told(diaryEntry(1, -9), false)],
    ['PL-1 overdue out on a job', told(diaryEntry(1, -1, { jobs: [out], stops: [out] }))],
    [
      'PL-1 due by 10 May, job LM-8 at stake',
      told(diaryEntry(1, 7, { jobs: [promised], stops: [promised] })),
    ],
  ])('calls a single item by its tag: %s', (subject, one) => {
    expect(digestSubject([one])).toBe(subject);
  });

  it('counts several, and tells apart what is due within a week', () => {
    expect(digestSubject([told(diaryEntry(1, 7)), told(diaryEntry(2, 7))])).toBe('2 due by 10 May');
    expect(digestSubject([told(diaryEntry(1, 7)), told(diaryEntry(2, 8))])).toBe(
      '1 due by 10 May, 1 more by 11 May',
    );
  });

  it('calls newly overdue only what was not told as overdue before', () => {
    const known = told(diaryEntry(3, -9), false);
    const stopping = told(diaryEntry(2, -9, { jobs: [promised], stops: [promised] }), false);
    expect(digestSubject([told(diaryEntry(1, -1)), known])).toBe(
      '1 newly overdue in store, 1 still overdue in store',
    );
    expect(digestSubject([stopping, known])).toBe(
      '1 overdue in store, job LM-8 at stake, 1 still overdue in store',
    );
    expect(digestSubject([told(diaryEntry(1, -1)), stopping, known])).toBe(
      '2 overdue in store, job LM-8 at stake, 1 still overdue in store',
    );
  });
});
