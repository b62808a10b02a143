import { describe, expect, it } from 'vitest';
import { nextExamination, type ExaminationToCount } from '../../src/rules/examination/next-due.js';
import type { Gear } from '../../src/rules/gear/gear.js';
import { ACCESSORY_TRIGGERS, day, every, gear, requirement, scheme, TODAY } from './example-gear.js';

function next(
  changes: Partial<ExaminationToCount> = {},
  { item = {}, months = 6 }: { item?: Partial<Gear>; months?: number } = {},
) {
  const triggers = months === 6 ? ACCESSORY_TRIGGERS : [every(months)];
  const examination = { examinedOn: TODAY, defects: [], ...changes };
  return nextExamination(gear(item), scheme([requirement(triggers)]), { examination, today: TODAY });
}

describe('the latest next examination', () => {
  // LOLER 1998 (SI 1998/2307) reg 9(3)(a): 6 months for accessories and the lifting of persons, 12 for the rest.
  it('is the interval of the scheme from the day of this one, whatever came before', () => {
    expect(next().latest).toBe('2026-12-10');
    expect(next({}, { months: 12 }).latest).toBe('2027-06-10');
    expect(next({ examinedOn: day('2025-08-31') }).latest).toBe('2026-02-28');
    const failed = { type: 'thoroughExamination', doneOn: day('2026-06-09'), outcome: 'unfit' } as const;
    expect(next({}, { item: { inspections: [failed] } }).latest).toBe('2026-12-10');
  });

  it('is the interval that was named where that is shorter, never where it is longer', () => {
    expect(next({ occasion: 'sixMonths' }, { months: 12 }).latest).toBe('2026-12-10');
    expect(next({ occasion: 'twelveMonths' }).latest).toBe('2026-12-10');
    expect(next({ occasion: 'exceptional' }, { months: 12 }).latest).toBe('2027-06-10');
  });

  it('follows a written scheme of the item', () => {
    const months = (count: number, reference?: string) => ({
      writtenSchemes: [
        {
          type: 'thoroughExamination' as const,
          months: count,
          ...(reference === undefined ? {} : { reference }),
        },
      ],
    });
    expect(next({ occasion: 'scheme' }, { item: months(3) }).latest).toBe('2026-09-10');
    expect(next({ occasion: 'scheme' }, { item: months(9, 'ES-4') }).latest).toBe('2027-03-10');
    expect(next({ occasion: 'scheme' }, { item: months(9) }).latest).toBe('2026-12-10');
  });

  it('is capped by the first day by which a defect could become a danger', () => {
    const defects = [{ by: day('2026-09-01') }, { by: day('2026-08-01') }, {}];
    expect(next({ defects }).latest).toBe('2026-08-01');
    expect(next({ defects: [{ by: day('2026-12-11') }] }).latest).toBe('2026-12-10');
  });

  it('is capped by a defect that stays open, unless its day has passed and keeps the item out of use by itself', () => {
    expect(next({}, { item: { defectDeadline: day('2026-06-11') } }).latest).toBe('2026-06-11');
    expect(next({}, { item: { defectDeadline: TODAY } }).latest).toBe('2026-12-10');
  });

  it('is open where no rule gives a day', () => {
    const none = nextExamination(gear(), scheme([]), {
      examination: { examinedOn: TODAY, defects: [] },
      today: TODAY,
    });
    expect(none).toStrictEqual({ workings: [] });
    const interim = scheme([requirement([every(12)], { type: 'interimInspection' })]);
    const asked = { examination: { examinedOn: TODAY, defects: [] }, today: TODAY };
    expect(nextExamination(gear(), interim, asked).latest).toBeUndefined();
  });

  it('shows the figures of the interval that was named and of the defect', () => {
    const { workings } = next(
      { occasion: 'sixMonths', defects: [{ by: day('2026-08-01') }] },
      { months: 12 },
    );
    expect(workings[0]).toEqual({
      title: 'Capped by a defect',
      formula: 'due = last day before the defect could become a danger',
      inputs: [{ name: 'could become a danger by', value: '2026-08-01', unit: '' }],
      result: { name: 'due', value: '2026-08-01', unit: '' },
      source: 'loler-1998',
    });
    expect(workings[1]).toEqual({
      title: 'Due by the interval named',
      formula: 'this examination + interval, clamped to the end of the month',
      inputs: [
        { name: 'this examination', value: TODAY, unit: '' },
        { name: 'interval', value: '6', unit: 'months' },
      ],
      result: { name: 'due', value: '2026-12-10', unit: '' },
      source: 'loler-1998',
    });
  });

  it('starts afresh: events and lifts before it call for nothing more, and lifts are no day', () => {
    const triggers = [every(6), { when: 'everyLifts', lifts: 800 } as const];
    const item = gear({
      events: [{ type: 'dropped', on: TODAY }],
      lifts: [{ on: day('2026-05-04'), lifts: 900 }],
    });
    const examination = { examinedOn: TODAY, defects: [] };
    const { latest, workings } = nextExamination(item, scheme([requirement(triggers)]), {
      examination,
      today: TODAY,
    });
    expect(latest).toBe('2026-12-10');
    expect(workings.map(({ title }) => title)).toEqual(['Due by interval']);
  });

  it('goes by what gives a day beside what asks after events or lifts only', () => {
    const rules = scheme([
      requirement([{ when: 'everyLifts', lifts: 800 }]),
      requirement([every(3)]),
      requirement([{ when: 'afterEvent', events: ['dropped'] }]),
    ]);
    const asked = { examination: { examinedOn: TODAY, defects: [] }, today: TODAY };
    const { latest, workings } = nextExamination(gear(), rules, asked);
    expect(latest).toBe('2026-09-10');
    expect(workings).toHaveLength(1);
  });

  it('shows the rule of the scheme first where the interval that was named ends on the same day', () => {
    const { workings } = next({ occasion: 'sixMonths' });
    expect(workings.map(({ title, result }) => `${title} ${result.value}`)).toEqual([
      'Due by interval 2026-12-10',
      'Due by the interval named 2026-12-10',
    ]);
  });

  it('shows how each rule came to its day, the earliest first', () => {
    const { workings } = next({ occasion: 'twelveMonths', defects: [{ by: day('2026-08-01') }] });
    expect(workings.map(({ title, result }) => `${title} ${result.value}`)).toEqual([
      'Capped by a defect 2026-08-01',
      'Due by interval 2026-12-10',
      'Due by the interval named 2027-06-10',
    ]);
  });
});
