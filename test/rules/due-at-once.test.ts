import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, addMonths } from '../../src/rules/calendar/day.js';
import { currency, dueDates } from '../../src/rules/due/due-date.js';
import type { Trigger } from '../../src/rules/due/scheme.js';
import type { Gear, InspectionRecord } from '../../src/rules/gear/gear.js';
import {
  ACCESSORY_TRIGGERS,
  day,
  every,
  examined,
  gear,
  requirement,
  scheme,
  TODAY,
  without,
} from './example-gear.js';

/** The one inspection of the default scheme. */
function only(changes: Partial<Gear>, triggers: readonly Trigger[] | null = ACCESSORY_TRIGGERS) {
  const [inspection] = dueDates(gear(changes), scheme([requirement(triggers)]), TODAY).inspections;
  if (!inspection) throw new Error('the scheme asks for nothing');
  return inspection;
}

describe('first use (LOLER 1998 reg 9(1): declaration not more than 12 months before entry into service)', () => {
  const fresh = (changes: Partial<Gear>, triggers = ACCESSORY_TRIGGERS) => {
    const unused = without(gear({ inspections: [] }), 'firstUsedOn');
    const [inspection] = dueDates(
      { ...unused, ...changes },
      scheme([requirement(triggers)]),
      TODAY,
    ).inspections;
    return inspection;
  };

  it('without a declaration an examination comes first', () => {
    expect(fresh({})).toMatchObject({ neverExamined: true, workings: [] });
    expect(fresh({})?.dueOn).toBeUndefined();
    expect(fresh({ declarationOn: day('2026-06-01') }, [every(6)])).toMatchObject({ neverExamined: true });
    expect(fresh({ declarationOn: day('2026-06-01') }, [{ when: 'firstUse' }])).toMatchObject({
      neverExamined: true,
    });
  });

  it.each([
    ['2025-06-09', true],
    ['2025-06-10', false],
    ['2026-06-10', false],
    ['2026-06-11', true],
  ])('unused, declared on %s: never examined is %s', (declarationOn, neverExamined) => {
    expect(fresh({ declarationOn: day(declarationOn) })).toMatchObject({ neverExamined });
  });

  it.each([
    ['2025-01-10', '2026-01-10', false],
    ['2025-01-10', '2026-01-11', true],
    ['2025-01-10', '2025-01-10', false],
    ['2025-01-10', '2025-01-09', true],
  ])(
    'declared on %s and in use since %s: never examined is %s',
    (declarationOn, firstUsedOn, neverExamined) => {
      const dates = { declarationOn: day(declarationOn), firstUsedOn: day(firstUsedOn) };
      expect(fresh(dates)).toMatchObject({ neverExamined });
    },
  );

  it('counts the interval from the declaration', () => {
    expect(fresh({ declarationOn: day('2026-02-10'), firstUsedOn: day('2026-05-01') })?.dueOn).toBe(
      '2026-08-10',
    );
    expect(fresh({ declarationOn: day('2026-02-10') })?.dueOn).toBe('2026-08-10');
  });

  it('unused, it must enter service while the declaration is good', () => {
    const yearly: Trigger[] = [every(24), { when: 'firstUse', declarationMonths: 12 }];
    expect(fresh({ declarationOn: day('2026-02-10') }, yearly)?.dueOn).toBe('2027-02-10');
    expect(
      fresh({ declarationOn: day('2026-02-10') }, yearly)?.workings.map(({ formula }) => formula),
    ).toEqual([
      'declaration + months it is good for, clamped to the end of the month',
      'declaration + interval, clamped to the end of the month',
    ]);
    expect(fresh({ declarationOn: day('2026-02-10'), firstUsedOn: day('2026-03-01') }, yearly)?.dueOn).toBe(
      '2028-02-10',
    );
  });

  it('unused, shows until when the declaration is good for first use', () => {
    expect(
      fresh({ declarationOn: day('2026-02-10') }, [{ when: 'firstUse', declarationMonths: 12 }]),
    ).toMatchObject({
      workings: [
        {
          title: 'Due before first use',
          formula: 'declaration + months it is good for, clamped to the end of the month',
          inputs: [{ name: 'declaration', value: '2026-02-10', unit: '' }],
          result: { name: 'due', value: '2027-02-10', unit: '' },
          source: 'loler-1998',
        },
      ],
    });
  });

  it('in use, only the interval from the declaration is left to show', () => {
    const inUse = fresh({ declarationOn: day('2026-02-10'), firstUsedOn: day('2026-03-01') });
    expect(inUse?.workings).toHaveLength(1);
    expect(inUse?.workings[0]?.inputs).toEqual([
      { name: 'declaration', value: '2026-02-10', unit: '' },
      { name: 'interval', value: '6', unit: 'months' },
    ]);
  });

  it('a declaration dated after today declares nothing yet, whatever the first use', () => {
    const dates = { declarationOn: day('2026-06-11'), firstUsedOn: day('2026-06-12') };
    expect(fresh(dates)).toMatchObject({ neverExamined: true, workings: [] });
  });

  it('an interval alone asks for an examination, an event alone does not', () => {
    const firstAndAfter: Trigger[] = [{ when: 'firstUse' }, { when: 'afterEvent', events: ['dropped'] }];
    expect(fresh({}, firstAndAfter)?.neverExamined).toBe(true);
    expect(fresh({}, [every(6)])?.neverExamined).toBe(true);
    expect(fresh({}, [{ when: 'afterEvent', events: ['dropped'] }])?.neverExamined).toBe(false);
  });
});

describe('after an event', () => {
  it.each([
    ['2026-02-28', undefined],
    ['2026-03-01', '2026-03-01'],
    ['2026-03-02', '2026-03-02'],
  ])('dropped on %s, examined on 2026-03-01', (on, due) => {
    const item = gear({ events: [{ type: 'dropped', on: day(on) }] });
    const report = dueDates(item, scheme(), TODAY);
    expect(report.inspections[0]?.afterEvent?.on).toBe(due);
    expect(report.inspections[0]?.dueOn).toBe('2026-09-01');
    expect(report.dueOn).toBe(due ?? '2026-09-01');
    expect(currency(report, TODAY, 14)).toBe(due === undefined ? 'inDate' : 'outOfDate');
  });

  it('counts only the events that the scheme lists, and names the latest', () => {
    expect(only({ events: [{ type: 'longIdle', on: day('2026-04-01') }] }).afterEvent).toBeUndefined();
    const events = [
      { type: 'dropped', on: day('2026-05-02') },
      { type: 'repaired', on: day('2026-05-03') },
      { type: 'dropped', on: day('2026-05-01') },
    ] as const;
    expect(only({ events }).afterEvent).toEqual({ type: 'repaired', on: '2026-05-03' });
  });

  it('on the very day puts the item out of date, not merely due', () => {
    const report = dueDates(gear({ events: [{ type: 'dropped', on: TODAY }] }), scheme(), TODAY);
    expect(report.dueOn).toBe(TODAY);
    expect(currency(report, TODAY, 14)).toBe('outOfDate');
  });

  it('counts for gear that was never examined', () => {
    const events = [{ type: 'dropped', on: day('2020-01-01') }] as const;
    const onlyEvents: Trigger[] = [{ when: 'afterEvent', events: ['dropped'] }];
    expect(only({ inspections: [], events }, onlyEvents).afterEvent?.on).toBe('2020-01-01');
  });
});

describe('failed examinations', () => {
  const failedOn = (inspections: readonly InspectionRecord[]) =>
    dueDates(gear({ inspections }), scheme(), TODAY).failed;
  const unfit = (doneOn: string, type: InspectionRecord['type'] = 'thoroughExamination') =>
    examined(doneOn, { outcome: 'unfit', type });

  it('stand until the same type, or a thorough examination for an interim one, is passed', () => {
    expect(failedOn([unfit('2026-04-01')])).toEqual([{ type: 'thoroughExamination', on: '2026-04-01' }]);
    expect(failedOn([unfit('2026-04-01'), examined('2026-04-02')])).toEqual([]);
    expect(failedOn([examined('2026-04-02'), unfit('2026-04-03')])).toHaveLength(1);
    expect(
      failedOn([unfit('2026-04-01'), examined('2026-04-02', { type: 'interimInspection' })]),
    ).toHaveLength(1);
    expect(failedOn([unfit('2026-04-01', 'interimInspection'), examined('2026-04-01')])).toEqual([]);
    expect(failedOn([examined('2026-04-01'), unfit('2026-04-01', 'interimInspection')])).toEqual([]);
    expect(failedOn([examined('2026-03-31'), unfit('2026-04-01', 'interimInspection')])).toEqual([
      { type: 'interimInspection', on: '2026-04-01' },
    ]);
    expect(failedOn([unfit('2026-04-01', 'proofLoadTest'), examined('2026-04-02')])).toEqual([
      { type: 'proofLoadTest', on: '2026-04-01' },
    ]);
  });

  it('on one day unfit outranks fit, in either order', () => {
    expect(failedOn([unfit('2026-04-01'), examined('2026-04-01')])).toHaveLength(1);
    expect(failedOn([examined('2026-04-01'), unfit('2026-04-01')])).toHaveLength(1);
  });

  it('leave failed pre-use checks to quarantine', () => {
    expect(failedOn([examined('2026-03-01'), unfit('2026-04-01', 'preUseCheck')])).toEqual([]);
  });

  it('make the item out of date from the very day', () => {
    const report = dueDates(gear({ inspections: [unfit('2026-06-10')] }), scheme(), TODAY);
    expect(currency(report, TODAY, 14)).toBe('outOfDate');
  });

  it('renew nothing and are due at once', () => {
    const report = dueDates(
      gear({ inspections: [examined('2026-03-01'), unfit('2026-06-01')] }),
      scheme(),
      TODAY,
    );
    expect(report.dueOn).toBe('2026-06-01');
    expect(report.inspections[0]).toMatchObject({ dueOn: '2026-09-01', lastDoneOn: '2026-06-01' });
    const never = only({
      inspections: [unfit('2026-06-01')],
      declarationOn: day('2026-05-01'),
      firstUsedOn: day('2026-05-01'),
    });
    expect(never).toMatchObject({ neverExamined: false, workings: [] });
    expect(never.dueOn).toBeUndefined();
  });

  it('make the item out of date', () => {
    const report = dueDates(gear({ inspections: [unfit('2026-06-01')] }), scheme(), TODAY);
    expect(currency(report, TODAY, 14)).toBe('outOfDate');
  });
});

describe('a defect deadline', () => {
  it('caps the due day without touching the inspections', () => {
    const report = dueDates(gear({ defectDeadline: day('2026-07-01') }), scheme(), TODAY);
    expect(report).toMatchObject({ dueOn: '2026-07-01', defectDeadline: '2026-07-01' });
    expect(report.inspections[0]?.dueOn).toBe('2026-09-01');
    expect(dueDates(gear({ defectDeadline: day('2026-10-01') }), scheme(), TODAY).dueOn).toBe('2026-09-01');
    expect(dueDates(gear({ defectDeadline: day('2026-07-01') }), scheme([]), TODAY).dueOn).toBe('2026-07-01');
  });
});

describe('currency', () => {
  const at = (today: string) => {
    const report = dueDates(gear(), scheme(), day(today));
    return currency(report, day(today), 14);
  };

  it.each([
    ['2026-08-17', 'inDate'],
    ['2026-08-18', 'dueSoon'],
    ['2026-09-01', 'dueSoon'],
    ['2026-09-02', 'outOfDate'],
  ])('due on 2026-09-01, on %s with 14 days of notice it is %s', (today, expected) => {
    expect(at(today)).toBe(expected);
  });

  it('tells never examined from not required', () => {
    expect(currency(dueDates(gear({ inspections: [] }), scheme(), TODAY), TODAY, 14)).toBe('neverExamined');
    expect(currency(dueDates(gear(), scheme([]), TODAY), TODAY, 14)).toBe('notRequired');
    const once = scheme([requirement([{ when: 'firstUse' }])]);
    expect(currency(dueDates(gear(), once, TODAY), TODAY, 14)).toBe('inDate');
    const late = gear({ defectDeadline: day('2026-06-09') });
    expect(currency(dueDates(late, scheme([]), TODAY), TODAY, 14)).toBe('outOfDate');
  });

  it('is in date through the due day, for any day and interval', () => {
    const anyDay = fc.integer({ min: 0, max: 5000 }).map((n) => addDays(day('2020-01-01'), n));
    fc.assert(
      fc.property(anyDay, fc.integer({ min: 1, max: 24 }), (done, months) => {
        const due = addMonths(done, months);
        const item = gear({ inspections: [examined(done)] });
        const rules = scheme([requirement([every(months)])]);
        expect(currency(dueDates(item, rules, due), due, 0)).toBe('dueSoon');
        const next = addDays(due, 1);
        expect(currency(dueDates(item, rules, next), next, 0)).toBe('outOfDate');
      }),
      { numRuns: 500 },
    );
  });
});

describe('an event on the day of the last inspection (common practice, no source: in doubt the event came later)', () => {
  const onTheDay = (answeredBy?: InspectionRecord['type'][]) =>
    only({
      inspections: [examined('2026-05-01')],
      events: [{ type: 'repaired', on: day('2026-05-01'), ...(answeredBy ? { answeredBy } : {}) }],
    }).afterEvent;

  it('asks for another inspection unless one of that type was recorded after it', () => {
    expect(onTheDay()).toMatchObject({ type: 'repaired' });
    expect(onTheDay([])).toMatchObject({ type: 'repaired' });
    expect(onTheDay(['interimInspection'])).toMatchObject({ type: 'repaired' });
    expect(onTheDay(['thoroughExamination'])).toBeUndefined();
  });

  it('asks for one the day after, whatever answered it on its day', () => {
    const later = only({
      inspections: [examined('2026-05-01')],
      events: [{ type: 'repaired', on: day('2026-05-02'), answeredBy: ['thoroughExamination'] }],
    });
    expect(later.afterEvent).toMatchObject({ on: '2026-05-02' });
  });
});
