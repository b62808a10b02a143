import { describe, expect, it } from 'vitest';
import { checkReminderRule, DEFAULT_REMINDER_RULE } from '../../src/rules/reminders/reminder-rule.js';
import { dayAt } from './reminders-example.js';

describe('a reminder rule', () => {
  it('holds as every store has it at first', () => {
    expect(checkReminderRule(DEFAULT_REMINDER_RULE)).toEqual([]);
  });

  it.each([
    [{ workDays: [7] }],
    [{ workDays: [1, 2, 3, 4, 5, 6, 7] }],
    [{ leadDays: [365, 1] }],
    [{ leadDays: [8, 7, 6, 5, 4, 3, 2, 1] }],
    [{ digestTime: '00:00' }],
    [{ digestTime: '23:59' }],
    [{ holidays: ['2028-02-29'] }],
    [{ holidays: Array.from({ length: 200 }, (_, n) => dayAt(n)) }],
  ])('holds at the edge: %j', (part) => {
    expect(checkReminderRule({ ...DEFAULT_REMINDER_RULE, ...part })).toEqual([]);
  });

  it.each([
    [{ workDays: [] }, ['no_work_day']],
    [{ workDays: [0] }, ['bad_work_day']],
    [{ workDays: [1, 8] }, ['bad_work_day']],
    [{ workDays: [1.5] }, ['bad_work_day']],
    [{ workDays: [2, 2] }, ['work_day_twice']],
    [{ holidays: ['2027-02-29'] }, ['bad_holiday']],
    [{ holidays: ['2028-02-29', '2028-02-29'] }, ['holiday_twice']],
    [{ holidays: Array.from({ length: 201 }, (_, n) => dayAt(n)) }, ['too_many_holidays']],
    [{ leadDays: [] }, ['no_lead']],
    [{ leadDays: [0] }, ['bad_lead']],
    [{ leadDays: [366] }, ['bad_lead']],
    [{ leadDays: [7, 0.5] }, ['bad_lead']],
    [{ leadDays: [7, 7] }, ['lead_twice']],
    [{ leadDays: [9, 8, 7, 6, 5, 4, 3, 2, 1] }, ['too_many_leads']],
    [{ digestTime: '24:00' }, ['bad_digest_time']],
    [{ digestTime: '6:00' }, ['bad_digest_time']],
    [{ digestTime: '06:60' }, ['bad_digest_time']],
    [{ digestTime: '06:00 ' }, ['bad_digest_time']],
    [{ digestTime: '106:00' }, ['bad_digest_time']],
    [{ workDays: [], leadDays: [0, 0] }, ['no_work_day', 'bad_lead', 'lead_twice']],
  ])('does not hold: %j', (part, problems) => {
    expect(checkReminderRule({ ...DEFAULT_REMINDER_RULE, ...part })).toEqual(problems);
  });
});
