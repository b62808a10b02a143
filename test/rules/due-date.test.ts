import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { addDays } from '../../src/rules/calendar/day.js';
import { dueDates } from '../../src/rules/due/due-date.js';
import { intervalFor } from '../../src/rules/due/interval.js';
import { lastInspection } from '../../src/rules/due/last-inspection.js';
import type { Trigger } from '../../src/rules/due/scheme.js';
import type { Gear } from '../../src/rules/gear/gear.js';
import {
  ACCESSORY_TRIGGERS,
  day,
  every,
  examined,
  gear,
  requirement,
  scheme,
  TODAY,
} from './example-gear.js';
import { golden } from './golden.js';

const rows =
  golden<{ rule: string; months: number; done: string; due: string; source: string }[]>('due-dates');

/** The one inspection of the default scheme. */
function only(changes: Partial<Gear>, triggers: readonly Trigger[] | null = ACCESSORY_TRIGGERS) {
  const [inspection] = dueDates(gear(changes), scheme([requirement(triggers)]), TODAY).inspections;
  if (!inspection) throw new Error('the scheme asks for nothing');
  return inspection;
}

describe('due by interval', () => {
  it.each(rows)('$rule examined $done is in date through $due by $source', ({ months, done, due }) => {
    const report = dueDates(
      gear({ inspections: [examined(done)] }),
      scheme([requirement([every(months)])]),
      day('2028-01-01'),
    );
    expect(report.dueOn).toBe(due);
    expect(report.inspections[0]?.workings[0]?.inputs.map(({ value }) => value)).toEqual([
      done,
      String(months),
    ]);
    expect(report.inspections[0]?.workings[0]?.result.value).toBe(due);
    expect(report.inspections[0]?.workings[0]?.source).toBe('loler-1998');
  });

  it('agrees with a general-purpose calendar library on thousands of days', () => {
    const anyDay = fc.integer({ min: 0, max: 20_000 }).map((n) => addDays(day('1990-01-01'), n));
    fc.assert(
      fc.property(anyDay, fc.integer({ min: 1, max: 60 }), (done, months) => {
        const item = gear({ inspections: [examined(done)] });
        const { dueOn } = dueDates(item, scheme([requirement([every(months)])]), day('2100-01-01'));
        expect(dueOn).toBe(DateTime.fromISO(done, { zone: 'utc' }).plus({ months }).toISODate());
      }),
      { numRuns: 3000 },
    );
  });

  it('counts from the last of several, and of two intervals takes the shorter', () => {
    const inspections = [examined('2026-04-01'), examined('2025-10-01')];
    expect(only({ inspections }).dueOn).toBe('2026-10-01');
    expect(only({ inspections }, [every(12), every(3)]).dueOn).toBe('2026-07-01');
  });

  it('has no due day where the scheme names no interval and the first examination is done', () => {
    const inspection = only({}, [{ when: 'firstUse' }]);
    expect(inspection).toMatchObject({ neverExamined: false, lastDoneOn: '2026-03-01', workings: [] });
    expect(inspection).not.toHaveProperty('dueOn');
    expect(intervalFor(gear(), 'thoroughExamination', [{ when: 'firstUse' }])).toStrictEqual({
      byWrittenScheme: false,
      ignoredWrittenScheme: false,
    });
  });

  it('names what is not there by leaving it out', () => {
    const report = dueDates(gear(), scheme([]), TODAY);
    expect(report).toStrictEqual({ hasRule: false, inspections: [], failed: [], cautions: [] });
    expect(only({})).not.toHaveProperty('afterEvent');
  });

  it('shows the sum with its two figures, the day it gives and whose rule it is', () => {
    expect(only({ inspections: [examined('2025-08-31')] }).workings).toEqual([
      {
        title: 'Due by interval',
        formula: 'last inspection + interval, clamped to the end of the month',
        inputs: [
          { name: 'last inspection', value: '2025-08-31', unit: '' },
          { name: 'interval', value: '6', unit: 'months' },
        ],
        result: { name: 'due', value: '2026-02-28', unit: '' },
        source: 'loler-1998',
      },
    ]);
  });
});

describe('inspections that count', () => {
  const interim = requirement([every(3)], { id: 'interim', type: 'interimInspection' });

  it('a thorough examination counts for an interim need, not the other way about', () => {
    const inspections = [examined('2026-04-01'), examined('2026-02-01', { type: 'interimInspection' })];
    expect(dueDates(gear({ inspections }), scheme([interim]), TODAY).dueOn).toBe('2026-07-01');
    const onlyInterim = [examined('2026-04-01', { type: 'interimInspection' })];
    expect(dueDates(gear({ inspections: onlyInterim }), scheme([interim]), TODAY).dueOn).toBe('2026-07-01');
    expect(only({ inspections: onlyInterim })).toMatchObject({ neverExamined: true });
    expect(only({ inspections: [examined('2026-04-01', { type: 'proofLoadTest' })] }).neverExamined).toBe(
      true,
    );
  });

  it('a pre-use check counts for nothing but itself', () => {
    const inspections = [examined('2026-06-01', { type: 'preUseCheck' }), examined('2026-06-02')];
    expect(lastInspection({ inspections }, 'preUseCheck', TODAY)?.doneOn).toBe('2026-06-01');
    expect(
      lastInspection({ inspections: inspections.slice(0, 1) }, 'interimInspection', TODAY),
    ).toBeUndefined();
  });

  it('a record dated after today is ignored, and said to be', () => {
    const future = dueDates(
      gear({ inspections: [examined('2026-06-11'), examined('2026-03-01')] }),
      scheme(),
      TODAY,
    );
    expect(future.dueOn).toBe('2026-09-01');
    expect(future.cautions).toEqual(['inspection_in_future_ignored']);
    const today = dueDates(gear({ inspections: [examined('2026-06-10')] }), scheme(), TODAY);
    expect(today.dueOn).toBe('2026-12-10');
    expect(today.cautions).toEqual([]);
    expect(only({ inspections: [examined('2026-06-11')] }).neverExamined).toBe(true);
  });

  it('pre-use checks have no due day', () => {
    const check = requirement([every(1)], { id: 'check', type: 'preUseCheck' });
    const report = dueDates(gear(), scheme([check]), TODAY);
    expect(report).toMatchObject({ hasRule: true, inspections: [] });
    expect(report.dueOn).toBeUndefined();
  });

  it('reports each requirement of the kind, and of several days the earliest', () => {
    const other = requirement([every(1)], { id: 'other', kinds: ['shackle'] });
    const report = dueDates(gear(), scheme([requirement(ACCESSORY_TRIGGERS), interim, other]), TODAY);
    expect(report.inspections.map(({ type, dueOn }) => [type, dueOn])).toEqual([
      ['thoroughExamination', '2026-09-01'],
      ['interimInspection', '2026-06-01'],
    ]);
    expect(report.dueOn).toBe('2026-06-01');
  });
});

describe('the entry in force', () => {
  const dated = (validFrom: string, triggers: readonly Trigger[] | null) => ({
    validFrom: day(validFrom),
    triggers,
    source: { key: `since-${validFrom}` },
    checkedOn: day('2026-01-01'),
  });
  const entries = [
    dated('2000-01-01', [every(12)]),
    dated('2026-06-10', [every(6)]),
    dated('2026-06-12', null),
  ];
  const changing = scheme([requirement(null, { entries })]);

  it.each([
    ['2026-06-09', '2027-03-01', 'since-2000-01-01'],
    ['2026-06-10', '2026-09-01', 'since-2026-06-10'],
    ['2026-06-11', '2026-09-01', 'since-2026-06-10'],
  ])('on %s gives %s by %s', (today, dueOn, source) => {
    const report = dueDates(gear(), changing, day(today));
    expect(report.dueOn).toBe(dueOn);
    expect(report.inspections[0]?.source.key).toBe(source);
  });

  it('asks nothing once withdrawn, nor before it is valid', () => {
    expect(dueDates(gear(), changing, day('2026-06-12'))).toMatchObject({ hasRule: false, inspections: [] });
    expect(dueDates(gear(), changing, day('1999-12-31'))).toMatchObject({ hasRule: false, inspections: [] });
  });
});

describe("the examiner's day", () => {
  it('brings the due day forward, never back', () => {
    expect(only({ inspections: [examined('2026-03-01', { nextDueOn: day('2026-08-31') })] }).dueOn).toBe(
      '2026-08-31',
    );
    const later = only({ inspections: [examined('2026-03-01', { nextDueOn: day('2026-09-02') })] });
    expect(later.dueOn).toBe('2026-09-01');
    expect(later.workings.map(({ result }) => result.value)).toEqual(['2026-09-01', '2026-09-02']);
  });

  it('is shown as named, after the interval where both give one day', () => {
    const named = examined('2026-03-01', { nextDueOn: day('2026-09-01') });
    const { workings } = only({ inspections: [named] });
    expect(workings.map(({ title }) => title)).toEqual(['Due by interval', 'Due by examiner']);
    expect(workings[1]).toEqual({
      title: 'Due by examiner',
      formula: 'due = named',
      inputs: [{ name: 'named', value: '2026-09-01', unit: '' }],
      result: { name: 'due', value: '2026-09-01', unit: '' },
      source: 'common-practice',
    });
  });

  it('holds by itself where the scheme names no interval', () => {
    const inspections = [examined('2026-03-01', { nextDueOn: day('2026-08-31') })];
    expect(only({ inspections }, [{ when: 'firstUse' }]).dueOn).toBe('2026-08-31');
  });
});

describe('a written scheme for one item', () => {
  const report = (months: number, reference?: string) => {
    const written = {
      type: 'thoroughExamination',
      months,
      ...(reference === undefined ? {} : { reference }),
    } as const;
    return dueDates(gear({ writtenSchemes: [written] }), scheme(), TODAY);
  };

  it.each([
    [5, undefined, '2026-08-01', []],
    [6, undefined, '2026-09-01', []],
    [7, undefined, '2026-09-01', ['written_scheme_ignored']],
    [7, ' ', '2026-09-01', ['written_scheme_ignored']],
    [7, 'WS-12', '2026-10-01', []],
    [0, 'WS-12', '2026-09-01', ['written_scheme_ignored']],
    [-6, 'WS-12', '2026-09-01', ['written_scheme_ignored']],
    [2.5, 'WS-12', '2026-09-01', ['written_scheme_ignored']],
    [1, undefined, '2026-04-01', []],
  ])('of %d months with reference %j gives %s', (months, reference, dueOn, cautions) => {
    expect(report(months, reference).dueOn).toBe(dueOn);
    expect(report(months, reference).cautions).toEqual(cautions);
  });

  it('warns when only one of several requirements sets it aside', () => {
    const interim = requirement([every(3)], { id: 'interim', type: 'interimInspection' });
    const rules = scheme([interim, requirement(ACCESSORY_TRIGGERS)]);
    const writtenSchemes = [{ type: 'thoroughExamination', months: 7 }] as const;
    expect(dueDates(gear({ writtenSchemes }), rules, TODAY).cautions).toEqual(['written_scheme_ignored']);
  });

  it('says in the working whose months they are', () => {
    expect(report(5).inspections[0]?.workings[0]?.title).toBe('Due by written scheme');
    expect(report(6).inspections[0]?.workings[0]?.title).toBe('Due by interval');
  });

  it('of several the shortest counts, and one for another type does not', () => {
    const writtenSchemes = [
      { type: 'thoroughExamination', months: 9, reference: 'WS-12' },
      { type: 'thoroughExamination', months: 4 },
      { type: 'interimInspection', months: 1 },
    ] as const;
    expect(only({ writtenSchemes }).dueOn).toBe('2026-07-01');
  });

  it('sets an interval where the scheme has none', () => {
    const writtenSchemes = [{ type: 'thoroughExamination', months: 4 }] as const;
    expect(only({ writtenSchemes }, [{ when: 'firstUse' }]).dueOn).toBe('2026-07-01');
  });
});
