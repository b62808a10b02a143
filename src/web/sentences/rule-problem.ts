import { isDay } from '../../rules/calendar/day.js';
import type { RuleProblem, WrittenRule } from '../../rules/reminders/reminder-rule.js';

/** What is wrong with a store's rule of reminders: the field, and what to write there. */
export function ruleProblem(code: RuleProblem, rule: WrittenRule): { field: string; message: string } {
  switch (code) {
    case 'no_work_day':
      return { field: 'workDays', message: 'choose at least one day on which the store works' };
    case 'bad_work_day':
      return { field: 'workDays', message: 'write the days as numbers from 1, Monday, to 7, Sunday' };
    case 'work_day_twice':
      return { field: 'workDays', message: 'name each day of the week once' };
    case 'bad_holiday':
      return { field: 'holidays', message: `${badHolidays(rule)}: write days that exist as YYYY-MM-DD` };
    case 'holiday_twice':
      return { field: 'holidays', message: 'name each day once' };
    case 'too_many_holidays':
      return {
        field: 'holidays',
        message: `name at most 200 days; these are ${rule.holidays.length}. Leave out those that are past`,
      };
    case 'no_lead':
      return { field: 'leadDays', message: 'write at least one lead time: from 1 to 365 days before' };
    case 'bad_lead':
      return { field: 'leadDays', message: 'write lead times as whole days from 1 to 365' };
    case 'lead_twice':
      return { field: 'leadDays', message: 'write each lead time once' };
    case 'too_many_leads':
      return { field: 'leadDays', message: 'write at most 8 lead times' };
    case 'bad_digest_time':
      return { field: 'digestTime', message: 'write a time of day from 00:00 to 23:59, such as 06:00' };
  }
}

/** The first three, in quotes: the rest is seldom of another kind. */
function badHolidays({ holidays }: WrittenRule): string {
  const bad = holidays.filter((holiday) => !isDay(holiday));
  const shown = bad.slice(0, 3).map((holiday) => `'${holiday}'`);
  return shown.join(', ') + (bad.length > shown.length ? ' and others' : '');
}
