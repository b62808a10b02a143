import { addDays, type Day } from '../../rules/calendar/day.js';
import { reminderDays } from '../../rules/reminders/reminder-days.js';
import type { ReminderRule } from '../../rules/reminders/reminder-rule.js';

/** What a rule comes to for an item that falls due on a day ahead. */
export interface RuleExample {
  readonly dueOn: Day;
  /** The days on which it is told, with the lead times that fall together on them. */
  readonly days: readonly { readonly on: Day; readonly leadDays: readonly number[] }[];
}

const FIVE_WEEKS = 35;

/** An item due five weeks ahead, or so far ahead that the longest lead time still lies before it. */
export function ruleExample(rule: ReminderRule, today: Day): RuleExample {
  const dueOn = addDays(today, Math.max(FIVE_WEEKS, ...rule.leadDays.map((days) => days + 5)));
  const told = new Map<Day, number[]>();
  for (const { on, leadDays } of reminderDays(dueOn, rule)) told.set(on, [...(told.get(on) ?? []), leadDays]);
  return { dueOn, days: [...told].map(([on, leadDays]) => ({ on, leadDays })) };
}
