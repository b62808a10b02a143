import { addDays, daysBetween, type Day } from '../calendar/day.js';
import type { ReminderRule } from './reminder-rule.js';
import { workDayFrom, workDayUpTo } from './work-calendar.js';

/** What is said of an item in a digest. */
export type Reminder =
  | {
      readonly kind: 'lead';
      /** The shortest lead time that was reached since the person was told last. */
      readonly leadDays: number;
      /** Days from today to the due day; 0 on the due day itself. */
      readonly daysLeft: number;
    }
  | {
      readonly kind: 'overdue';
      /** Days since the due day; 0 of what is overdue from the start, such as gear never examined. */
      readonly days: number;
    };

/** An item and the day on which its reminders are looked at. */
export interface ReminderInput {
  readonly dueOn: Day;
  /** True when it may no longer be used: past its due day, or not before it is examined. */
  readonly overdue: boolean;
  readonly outOnJob: boolean;
  readonly today: Day;
  /** The last day whose reminders were told already; undefined when nothing was ever told. */
  readonly coveredThrough: Day | undefined;
  readonly rule: ReminderRule;
}

/**
 * What is told of an item on `today`, when all up to and with `coveredThrough` was told before; undefined when no
 * reminder day lies between. Missed days are merged into one reminder, which says how things stand today. Where
 * nothing was ever told, everything within the longest lead time is told, and all that is overdue.
 */
export function reminderFor(input: ReminderInput): Reminder | undefined {
  const lead = shortestLeadReached(input);
  const { dueOn, overdue, today } = input;
  if (overdue) {
    const told = lead !== undefined || hasOverdueDay(input);
    return told ? { kind: 'overdue', days: Math.max(0, daysBetween(dueOn, today)) } : undefined;
  }
  return lead === undefined
    ? undefined
    : { kind: 'lead', leadDays: lead, daysLeft: daysBetween(today, dueOn) };
}

/**
 * The day on which each lead time reminds, the earliest first: so many days before the due day, or the last working
 * day of the store before that. Two lead times may share a day.
 */
export function reminderDays(
  dueOn: Day,
  rule: ReminderRule,
): { readonly on: Day; readonly leadDays: number }[] {
  return [...rule.leadDays]
    .sort((a, b) => b - a)
    .map((leadDays) => ({ on: workDayUpTo(addDays(dueOn, -leadDays), rule), leadDays }));
}

function shortestLeadReached({ dueOn, today, coveredThrough, rule }: ReminderInput): number | undefined {
  return reminderDays(dueOn, rule)
    .filter(({ on }) => on <= today && (coveredThrough === undefined || on > coveredThrough))
    .at(-1)?.leadDays;
}

/** True when a day on which overdue gear is told of lies after what was told, up to today. */
function hasOverdueDay({ dueOn, outOnJob, today, coveredThrough, rule }: ReminderInput): boolean {
  if (coveredThrough === undefined) return true;
  // What is overdue from the start may have its due day today or later, and is told of all the same.
  const overdueFrom = dueOn < today ? addDays(dueOn, 1) : today;
  const untold = addDays(coveredThrough, 1);
  const first = untold > overdueFrom ? untold : overdueFrom;
  return (outOnJob ? first : workDayFrom(first, rule)) <= today;
}
