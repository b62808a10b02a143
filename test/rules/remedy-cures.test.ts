import { describe, expect, it } from 'vitest';
import { remedies } from '../../src/rules/allocation/remedies.js';
import { toDay } from '../../src/rules/calendar/day.js';
import { REFUSAL_CODES, type RefusalCode } from '../../src/rules/fitness/refusal.js';
import { inShort, refusal, refused, shortBy } from '../support/remedy-inputs.js';

describe('what each remedy cures', () => {
  const cured: Partial<Record<RefusalCode, string>> = {
    excluded_by_storeman: 'liftExclusion',
    at_another_store: 'moveFromStore',
    never_examined: 'examine',
    out_of_date: 'examine',
    due_during_job: 'examine',
    examine_after_event: 'examine',
    lifts_used_up: 'examine',
    certificate_missing: 'examine',
    promised_elsewhere: 'waitForReturn',
    not_back_yet: 'waitForReturn',
  };

  it.each(REFUSAL_CODES.map((code) => ({ code, kind: cured[code] ?? 'hire' })))(
    '$code: $kind',
    ({ code, kind }) => {
      const [answer] = remedies(shortBy(1, [refused(1, [refusal(code, { on: '2026-06-12' })])]));
      expect(answer?.remedies.map((remedy) => remedy.kind)).toEqual([kind]);
    },
  );

  it.each([
    ['excluded_by_storeman', 'out_of_date'],
    ['at_another_store', 'promised_elsewhere'],
    ['out_of_date', 'quarantined'],
    ['never_examined', 'under_rated'],
    ['promised_elsewhere', 'due_during_job'],
  ] as const)('offers no item refused for %s and %s', (first, second) => {
    const both = [refusal(first, { on: '2026-06-12' }), refusal(second, { on: '2026-06-12' })];
    for (const refusals of [both, [...both].reverse()]) {
      expect(inShort(remedies(shortBy(1, [refused(1, refusals)])))).toEqual(['hire:1']);
    }
  });

  it('offers no item that was not refused on the line, or has no reason there', () => {
    const elsewhere = refused(1, [], {
      lines: [{ lineKey: 'B', refusals: [refusal('excluded_by_storeman')] }],
    });
    expect(inShort(remedies(shortBy(1, [elsewhere, refused(2, [])])))).toEqual(['hire:1']);
  });
});

describe('examining', () => {
  it('names the types, each once, in the order of the inspection types', () => {
    const refusals = [
      refusal('out_of_date', { subject: 'proofLoadTest' }),
      refusal('due_during_job', { subject: 'interimInspection' }),
      refusal('examine_after_event', { subject: 'interimInspection' }),
    ];
    const [answer] = remedies(shortBy(1, [refused(1, refusals)]));
    expect(answer?.remedies).toEqual([
      {
        kind: 'examine',
        lineKey: 'A',
        items: [{ itemId: 1, tag: 'SL-1', types: ['interimInspection', 'proofLoadTest'] }],
        covers: 1,
        by: '2026-06-09',
      },
    ]);
  });

  it('asks for a thorough examination where a refusal names an event or nothing', () => {
    const refusals = [refusal('examine_after_event', { subject: 'dropped' }), refusal('certificate_missing')];
    const [answer] = remedies(shortBy(1, [refused(1, refusals)]));
    expect(answer?.remedies[0]?.items).toEqual([{ itemId: 1, tag: 'SL-1', types: ['thoroughExamination'] }]);
  });

  it.each([
    { today: '2026-06-08', by: '2026-06-09' },
    { today: '2026-06-09', by: '2026-06-09' },
    { today: '2026-06-10', by: '2026-06-10' },
    { today: '2026-06-12', by: '2026-06-12' },
  ])('is to be done by the day before load-out, or today if later: on $today by $by', ({ today, by }) => {
    const input = shortBy(1, [refused(1, [refusal('never_examined')])], { today: toDay(today) });
    expect(remedies(input)[0]?.remedies[0]).toMatchObject({ kind: 'examine', by });
  });

  it.each([
    // Examined on 9 June for 6 months: in date through 9 December.
    { to: '2026-12-09', expected: 'examine:SL-1' },
    { to: '2026-12-10', expected: 'hire:1' },
  ])('does not help where it runs out before the gear is back on $to', ({ to, expected }) => {
    const months = { thoroughExamination: 6 };
    const item = refused(1, [refusal('due_during_job', { subject: 'thoroughExamination' })], {
      intervalMonths: months,
    });
    const window = { from: toDay('2026-06-10'), to: toDay(to) };
    expect(inShort(remedies(shortBy(1, [item], { window })))).toEqual([expected]);
  });

  it('does not help where one of two inspections runs out before the gear is back', () => {
    const refusals = [
      refusal('out_of_date', { subject: 'interimInspection' }),
      refusal('out_of_date', { subject: 'thoroughExamination' }),
    ];
    const lasting = (interimInspection: number, thoroughExamination: number) =>
      shortBy(1, [refused(1, refusals, { intervalMonths: { interimInspection, thoroughExamination } })]);
    expect(inShort(remedies(lasting(12, 0)))).toEqual(['hire:1']);
    expect(inShort(remedies(lasting(0, 12)))).toEqual(['hire:1']);
    expect(inShort(remedies(lasting(12, 12)))).toEqual(['examine:SL-1']);
  });

  it('asks only the interval of the types it needs', () => {
    const item = refused(1, [refusal('out_of_date', { subject: 'interimInspection' })], {
      intervalMonths: { thoroughExamination: 0 },
    });
    expect(inShort(remedies(shortBy(1, [item])))).toEqual(['examine:SL-1']);
  });
});

describe('waiting for a return', () => {
  it.each([
    {
      what: 'the day after its back day',
      backOn: '2026-06-12',
      today: '2026-06-01',
      loadOutFrom: '2026-06-13',
    },
    {
      what: 'tomorrow where it is late',
      backOn: '2026-06-12',
      today: '2026-06-14',
      loadOutFrom: '2026-06-15',
    },
    {
      what: 'tomorrow where it is back today',
      backOn: '2026-06-14',
      today: '2026-06-14',
      loadOutFrom: '2026-06-15',
    },
    { what: 'no earlier than the job', backOn: '2026-05-20', today: '2026-06-01', loadOutFrom: '2026-06-10' },
  ])('lets the job load out from $what', ({ backOn, today, loadOutFrom }) => {
    const item = refused(1, [refusal('not_back_yet', { on: backOn })]);
    expect(remedies(shortBy(1, [item], { today: toDay(today) }))[0]?.remedies).toEqual([
      {
        kind: 'waitForReturn',
        lineKey: 'A',
        items: [{ itemId: 1, tag: 'SL-1', backOn, loadOutFrom }],
        covers: 1,
        loadOutFrom,
      },
    ]);
  });

  it('counts the last of several promises, whichever comes first in the list', () => {
    const promises = ['2026-06-12', '2026-06-16'].map((on) => refusal('promised_elsewhere', { on }));
    for (const refusals of [promises, [...promises].reverse()]) {
      expect(remedies(shortBy(1, [refused(1, refusals)]))[0]?.remedies[0]).toMatchObject({
        items: [{ backOn: '2026-06-16' }],
        loadOutFrom: '2026-06-17',
      });
    }
  });

  it('waits for those back first, and until the last of them', () => {
    const backDays = ['2026-06-14', '2026-06-12', '2026-06-13'];
    const items = backDays.map((on, place) => refused(place + 1, [refusal('promised_elsewhere', { on })]));
    const answers = remedies(shortBy(2, items));
    expect(inShort(answers)).toEqual(['waitForReturn:SL-2,SL-3']);
    expect(answers[0]?.remedies[0]).toMatchObject({ loadOutFrom: '2026-06-14' });
  });

  it('does not wait without a back day', () => {
    const refusals = [refusal('not_back_yet'), refusal('promised_elsewhere', { on: '2026-06-12' })];
    expect(inShort(remedies(shortBy(1, [refused(1, refusals)])))).toEqual(['hire:1']);
  });
});
