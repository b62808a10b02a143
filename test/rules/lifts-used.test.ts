import { describe, expect, it } from 'vitest';
import { currency, dueDates } from '../../src/rules/due/due-date.js';
import { liftsUsed } from '../../src/rules/due/lifts-used.js';
import type { Trigger } from '../../src/rules/due/scheme.js';
import { fitness } from '../../src/rules/fitness/fitness.js';
import type { DayLifts } from '../../src/rules/gear/gear.js';
import {
  ACCESSORY_TRIGGERS,
  context,
  day,
  every,
  examined,
  gear,
  line,
  requirement,
  scheme,
  TODAY,
} from './example-gear.js';

const SOURCE = { key: 'common-practice' };

function byLifts(...lifts: number[]): Trigger[] {
  return lifts.map((number) => ({ when: 'everyLifts', lifts: number }));
}

function onDays(...days: readonly (readonly [on: string, lifts: number])[]): DayLifts[] {
  return days.map(([on, lifts]) => ({ on: day(on), lifts }));
}

// Inspection by lifts made is common practice, no source for the rule as such; AS 3775 (grade T chain slings, as reproduced)
// sets intervals by lift cycles a week: more than 200 a week, monthly. 800 is four weeks of 200.
describe('lifts since the last inspection', () => {
  const may = (lifts: number) => onDays(['2026-05-04', lifts]);
  const rule = { triggers: byLifts(800), source: SOURCE };

  it.each([
    [0, undefined],
    [799, undefined],
    [800, '2026-05-04'],
    [801, '2026-05-04'],
  ])('%i of 800 are used up on %s', (lifts, usedUpOn) => {
    const used = liftsUsed(gear({ lifts: may(lifts) }), rule, day('2026-03-01'));
    expect(used).toMatchObject({ counted: lifts, allowed: 800 });
    expect(used?.usedUpOn).toBe(usedUpOn);
  });

  it('count from the day of the inspection, that day included, and none before', () => {
    const lifts = onDays(['2026-02-28', 700], ['2026-03-01', 50], ['2026-03-02', 49]);
    expect(liftsUsed(gear({ lifts }), rule, day('2026-03-01'))?.counted).toBe(99);
    expect(liftsUsed(gear({ lifts }), rule, undefined)?.counted).toBe(799);
  });

  it('are used up on the day of the last lift allowed, in whatever order the days come', () => {
    const [last, first, middle] = onDays(['2026-05-06', 400], ['2026-05-04', 400], ['2026-05-05', 400]);
    if (!last || !first || !middle) throw new Error('three days were made');
    for (const lifts of [
      [last, first, middle],
      [middle, last, first],
      [first, middle, last],
      [last, middle, first],
    ])
      expect(liftsUsed(gear({ lifts }), rule, day('2026-03-01'))?.usedUpOn).toBe('2026-05-05');
  });

  it('say nothing of a day while some are left', () => {
    expect(liftsUsed(gear({ lifts: may(799) }), rule, undefined)).not.toHaveProperty('usedUpOn');
  });

  it('count against the fewest of two rules', () => {
    const both = { triggers: byLifts(800, 300), source: SOURCE };
    expect(liftsUsed(gear({ lifts: may(300) }), both, undefined)).toMatchObject({
      allowed: 300,
      usedUpOn: '2026-05-04',
    });
  });

  it('are of no concern where no rule counts them', () => {
    expect(liftsUsed(gear({ lifts: may(9000) }), { triggers: [every(6)], source: SOURCE }, undefined)).toBe(
      undefined,
    );
  });

  it('show their working, for gear that made none too', () => {
    const caution = 'Every lift of a job day counts for each item that was out on the job, used or not.';
    expect(liftsUsed(gear({ lifts: may(830) }), rule, day('2026-03-01'))?.working).toEqual({
      title: 'Lifts left before the next inspection',
      formula: 'allowed − counted, and no less than 0',
      inputs: [
        { name: 'counted from', value: '2026-03-01', unit: '' },
        { name: 'allowed', value: '800', unit: 'lifts' },
        { name: 'counted', value: '830', unit: 'lifts' },
      ],
      result: { name: 'left', value: '0', unit: 'lifts' },
      source: 'common-practice',
      caution,
    });
    const unused = liftsUsed(gear(), rule, undefined)?.working;
    expect(unused?.result).toEqual({ name: 'left', value: '800', unit: 'lifts' });
    expect(unused?.inputs.map(({ name }) => name)).toEqual(['allowed', 'counted']);
  });
});

describe('gear that has made its lifts', () => {
  const rules = scheme([requirement([...ACCESSORY_TRIGGERS, ...byLifts(200)])]);
  const used = (lifts: number) => gear({ lifts: onDays(['2026-05-04', lifts]) });
  const reasons = (item = gear()) => fitness(item, line(), context({ scheme: rules })).refusals;

  it('is refused with the figures, the type and the day', () => {
    expect(reasons(used(199))).toEqual([]);
    expect(reasons(used(200))).toEqual([
      {
        code: 'lifts_used_up',
        subject: 'thoroughExamination',
        on: '2026-05-04',
        needed: '200',
        has: '200',
        unit: 'lifts',
        source: 'loler-1998',
      },
    ]);
  });

  it('is out of date, due on the day of its last lift', () => {
    const [left, none] = [dueDates(used(199), rules, TODAY), dueDates(used(200), rules, TODAY)];
    expect([left.dueOn, currency(left, TODAY, 30)]).toEqual(['2026-09-01', 'inDate']);
    expect([none.dueOn, currency(none, TODAY, 30)]).toEqual(['2026-05-04', 'outOfDate']);
    expect(none.inspections[0]?.lifts).toEqual({ counted: 200, allowed: 200, usedUpOn: '2026-05-04' });
    expect(left.inspections[0]?.lifts).toEqual({ counted: 199, allowed: 200 });
    expect(left.inspections[0]?.workings.map(({ title }) => title)).toEqual([
      'Due by interval',
      'Lifts left before the next inspection',
    ]);
  });

  it('starts afresh with an examination passed after, and not with one that failed', () => {
    const lifts = onDays(['2026-05-04', 500]);
    expect(reasons(gear({ lifts, inspections: [examined('2026-05-05')] }))).toEqual([]);
    const failed = [examined('2026-05-05', { outcome: 'unfit' })];
    expect(reasons(gear({ lifts, inspections: failed })).map(({ code }) => code)).toEqual([
      'failed_examination',
      'lifts_used_up',
    ]);
  });

  it('is not held to be examined first by a rule that counts lifts only', () => {
    const only = scheme([requirement(byLifts(200), { certificateRequired: false })]);
    const report = dueDates(gear({ inspections: [] }), only, TODAY);
    expect(report.inspections[0]).toMatchObject({
      neverExamined: false,
      lifts: { counted: 0, allowed: 200 },
    });
    expect(currency(report, TODAY, 30)).toBe('inDate');
  });
});
