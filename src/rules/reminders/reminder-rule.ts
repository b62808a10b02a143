import { isDay, toDay } from '../calendar/day.js';
import type { WorkCalendar } from './work-calendar.js';

/** When a store works, how early it wants to hear of what falls due, and at what time of its day. */
export interface ReminderRule extends WorkCalendar {
  /** Days before the due day; each reminds once. */
  readonly leadDays: readonly number[];
  /** Local time of day at the store, `HH:MM` from 00:00 to 23:59. */
  readonly digestTime: string;
}

/** What a store gets that has set nothing. Common practice, no source. */
export const DEFAULT_REMINDER_RULE: ReminderRule = {
  workDays: [1, 2, 3, 4, 5],
  holidays: [],
  leadDays: [30, 14, 7, 1],
  digestTime: '06:00',
};

/** What is wrong with a rule as it was written. */
export type RuleProblem =
  | 'no_work_day'
  | 'bad_work_day'
  | 'work_day_twice'
  | 'bad_holiday'
  | 'holiday_twice'
  | 'too_many_holidays'
  | 'no_lead'
  | 'bad_lead'
  | 'lead_twice'
  | 'too_many_leads'
  | 'bad_digest_time';

/** A rule as it was typed: its holidays may be any text. */
export type WrittenRule = Omit<ReminderRule, 'holidays'> & { readonly holidays: readonly string[] };

const MOST_HOLIDAYS = 200;
const MOST_LEADS = 8;
const LONGEST_LEAD_DAYS = 365;

/**
 * Everything that is wrong with a rule, in the order of its fields; nothing when it holds. At least one lead time is
 * asked, because a company that hears only once gear is overdue hears too late.
 */
export function checkReminderRule(rule: WrittenRule): RuleProblem[] {
  return [...checkWorkDays(rule), ...checkHolidays(rule), ...checkLeads(rule), ...checkTime(rule)];
}

/** The written rule with its holidays as days. @throws RangeError when a holiday is no day; check it first. */
export function toReminderRule(rule: WrittenRule): ReminderRule {
  return { ...rule, holidays: rule.holidays.map(toDay) };
}

function checkWorkDays({ workDays }: WrittenRule): RuleProblem[] {
  return listOf({
    no_work_day: workDays.length === 0,
    bad_work_day: !workDays.every((day) => isWholeWithin(day, 7)),
    work_day_twice: hasTwice(workDays),
  });
}

function checkHolidays({ holidays }: WrittenRule): RuleProblem[] {
  return listOf({
    bad_holiday: !holidays.every(isDay),
    holiday_twice: hasTwice(holidays),
    too_many_holidays: holidays.length > MOST_HOLIDAYS,
  });
}

function checkLeads({ leadDays }: WrittenRule): RuleProblem[] {
  return listOf({
    no_lead: leadDays.length === 0,
    bad_lead: !leadDays.every((days) => isWholeWithin(days, LONGEST_LEAD_DAYS)),
    lead_twice: hasTwice(leadDays),
    too_many_leads: leadDays.length > MOST_LEADS,
  });
}

function checkTime({ digestTime }: WrittenRule): RuleProblem[] {
  return listOf({ bad_digest_time: !/^([01]\d|2[0-3]):[0-5]\d$/.test(digestTime) });
}

function listOf<Code extends RuleProblem>(found: Readonly<Record<Code, boolean>>): Code[] {
  return keysOf(found).filter((code) => found[code]);
}

function keysOf<Key extends string>(record: Readonly<Record<Key, boolean>>): Key[] {
  return Object.keys(record) as Key[];
}

function isWholeWithin(value: number, most: number): boolean {
  return Number.isInteger(value) && value >= 1 && value <= most;
}

function hasTwice(values: readonly unknown[]): boolean {
  return new Set(values).size < values.length;
}
