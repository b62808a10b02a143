import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toDay, type Day } from '../../src/rules/calendar/day.js';
import { reminderDays, reminderFor } from '../../src/rules/reminders/reminder-days.js';
import { DEFAULT_REMINDER_RULE, type ReminderRule } from '../../src/rules/reminders/reminder-rule.js';
import { anyCalendar, dayAt, worksOn } from './reminders-example.js';

const anyLeads = fc.uniqueArray(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 5 });

const anyRule: fc.Arbitrary<ReminderRule> = fc
  .tuple(anyCalendar(6), anyLeads)
  .map(([calendar, leadDays]) => ({ ...calendar, leadDays, digestTime: '06:00' }));

/** Each day of the first two years on which an item is told of, worked out one day after the other. */
function remindingDays(due: number, outOnJob: boolean, rule: ReminderRule): Set<number> {
  const days = new Set<number>();
  for (const lead of rule.leadDays) {
    let day = due - lead;
    while (!worksOn(day, rule)) day -= 1;
    days.add(day);
  }
  for (let day = due + 1; day < 1000; day += 1) if (outOnJob || worksOn(day, rule)) days.add(day);
  return days;
}

describe('the reminders of an item', () => {
  it('come on each reminder day when every day is run, and are merged when days are left out', () => {
    fc.assert(
      fc.property(
        anyRule,
        fc.integer({ min: 150, max: 400 }),
        fc.boolean(),
        fc.array(fc.integer({ min: 1, max: 20 }), { minLength: 1, maxLength: 30 }),
        (rule, due, outOnJob, steps) => {
          const expected = remindingDays(due, outOnJob, rule);
          const told = (from: number, to: number) =>
            reminderFor({
              dueOn: dayAt(due),
              overdue: to > due,
              outOnJob,
              today: dayAt(to),
              coveredThrough: dayAt(from),
              rule,
            }) !== undefined;
          for (let day = 1; day < 365 + 150; day += 1) expect(told(day - 1, day)).toBe(expected.has(day));
          let covered = due - 70;
          for (const step of steps) {
            const today = covered + step;
            const missed = Array.from({ length: step }, (_, n) => covered + 1 + n);
            expect(told(covered, today)).toBe(missed.some((day) => expected.has(day)));
            expect(told(today, today)).toBe(false);
            covered = today;
          }
        },
      ),
      { numRuns: 30 },
    );
  });

  it('of overdue gear come every working day, and every day while it is out on a job', () => {
    fc.assert(
      fc.property(
        anyRule,
        fc.integer({ min: 1, max: 300 }),
        fc.integer({ min: 1, max: 400 }),
        (rule, due, days) => {
          const today = due + days;
          const input = {
            dueOn: dayAt(due),
            overdue: true,
            today: dayAt(today),
            coveredThrough: dayAt(today - 1),
            rule,
          };
          const overdue = { kind: 'overdue', days };
          if (worksOn(today, rule)) expect(reminderFor({ ...input, outOnJob: false })).toEqual(overdue);
          expect(reminderFor({ ...input, outOnJob: true })).toEqual(overdue);
        },
      ),
    );
  });

  it('say how things stand today: the shortest lead time reached and the days that are left', () => {
    // Due on Wednesday 31 March 2027; 30 days before is Monday 1 March.
    const at = (today: string, coveredThrough?: string) =>
      reminderFor({
        dueOn: toDay('2027-03-31'),
        overdue: today > '2027-03-31',
        outOnJob: false,
        today: toDay(today),
        coveredThrough: coveredThrough === undefined ? undefined : toDay(coveredThrough),
        rule: DEFAULT_REMINDER_RULE,
      });
    expect(at('2027-03-01', '2027-02-28')).toEqual({ kind: 'lead', leadDays: 30, daysLeft: 30 });
    expect(at('2027-03-18', '2027-02-28')).toEqual({ kind: 'lead', leadDays: 14, daysLeft: 13 });
    expect(at('2027-03-30', '2027-02-01')).toEqual({ kind: 'lead', leadDays: 1, daysLeft: 1 });
    expect(at('2027-03-31', '2027-03-29')).toEqual({ kind: 'lead', leadDays: 1, daysLeft: 0 });
    expect(at('2027-03-31', '2027-03-30')).toBeUndefined();
    expect(at('2027-04-01', '2027-03-31')).toEqual({ kind: 'overdue', days: 1 });
  });

  it('when nothing was ever told, hold all within the longest lead time and all that is overdue', () => {
    const first = (dueOn: Day, today: Day) =>
      reminderFor({
        dueOn,
        overdue: today > dueOn,
        outOnJob: false,
        today,
        coveredThrough: undefined,
        rule: DEFAULT_REMINDER_RULE,
      });
    // 30 days before Saturday 3 April 2027 is Thursday 4 March; before Monday 5 April it is Saturday, so Friday 5 March.
    expect(first(toDay('2027-04-03'), toDay('2027-03-03'))).toBeUndefined();
    expect(first(toDay('2027-04-03'), toDay('2027-03-04'))).toMatchObject({ kind: 'lead', leadDays: 30 });
    expect(first(toDay('2027-04-05'), toDay('2027-03-05'))).toEqual({
      kind: 'lead',
      leadDays: 30,
      daysLeft: 31,
    });
    expect(first(toDay('2027-03-10'), toDay('2027-03-05'))).toMatchObject({ kind: 'lead', leadDays: 7 });
    // On a Saturday too: the first digest leaves nothing for later.
    expect(first(toDay('2027-03-01'), toDay('2027-03-06'))).toEqual({ kind: 'overdue', days: 5 });
  });

  it('of what is overdue from the start come on the next working day', () => {
    const never = (today: string, coveredThrough: string) =>
      reminderFor({
        dueOn: toDay('2027-03-05'),
        overdue: true,
        outOnJob: false,
        today: toDay(today),
        coveredThrough: toDay(coveredThrough),
        rule: { ...DEFAULT_REMINDER_RULE, leadDays: [30] },
      });
    // 5 March 2027 is a Friday.
    expect(never('2027-03-05', '2027-03-04')).toEqual({ kind: 'overdue', days: 0 });
    expect(never('2027-03-06', '2027-03-05')).toBeUndefined();
    expect(never('2027-03-08', '2027-03-07')).toEqual({ kind: 'overdue', days: 3 });
  });

  it('of what ran out on the last working day wait for the next, also when that day was not run', () => {
    // Due on Friday 5 March 2027, told last on Thursday; the lead time of one day was told then.
    const after = (today: string) =>
      reminderFor({
        dueOn: toDay('2027-03-05'),
        overdue: true,
        outOnJob: false,
        today: toDay(today),
        coveredThrough: toDay('2027-03-04'),
        rule: DEFAULT_REMINDER_RULE,
      });
    expect(after('2027-03-06')).toBeUndefined();
    expect(after('2027-03-08')).toEqual({ kind: 'overdue', days: 3 });
  });

  it('come at once of what may not be used though its due day is beyond every lead time', () => {
    const damaged = reminderFor({
      dueOn: toDay('2027-12-01'),
      overdue: true,
      outOnJob: false,
      today: toDay('2027-03-04'),
      coveredThrough: undefined,
      rule: DEFAULT_REMINDER_RULE,
    });
    expect(damaged).toEqual({ kind: 'overdue', days: 0 });
  });

  it('that fall on free days and were missed are told on the first day that is run, working or not', () => {
    // Due on Saturday 6 March 2027: the reminder of the day before fell on Friday, when nothing ran.
    const friday = reminderFor({
      dueOn: toDay('2027-03-06'),
      overdue: true,
      outOnJob: false,
      today: toDay('2027-03-07'),
      coveredThrough: toDay('2027-03-04'),
      rule: DEFAULT_REMINDER_RULE,
    });
    expect(friday).toEqual({ kind: 'overdue', days: 1 });
  });
});

describe('the reminder days', () => {
  it('are working days, the earliest first, and two lead times may share one', () => {
    // Monday 8 March 2027: one day before is Sunday, two Saturday, both moved to Friday.
    expect(reminderDays(toDay('2027-03-08'), { ...DEFAULT_REMINDER_RULE, leadDays: [1, 30, 2] })).toEqual([
      { on: '2027-02-05', leadDays: 30 },
      { on: '2027-03-05', leadDays: 2 },
      { on: '2027-03-05', leadDays: 1 },
    ]);
  });

  it('move before a holiday, and over a leap day', () => {
    const rule = { ...DEFAULT_REMINDER_RULE, leadDays: [1], holidays: [toDay('2028-02-29')] };
    expect(reminderDays(toDay('2028-03-01'), rule)).toEqual([{ on: '2028-02-28', leadDays: 1 }]);
    expect(reminderDays(toDay('2028-03-01'), { ...rule, holidays: [] })).toEqual([
      { on: '2028-02-29', leadDays: 1 },
    ]);
  });
});
