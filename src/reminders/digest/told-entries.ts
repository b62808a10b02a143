import { addDays, daysBetween, type Day } from '../../rules/calendar/day.js';
import { reminderFor, type Reminder } from '../../rules/reminders/reminder-days.js';
import type { ReminderRule } from '../../rules/reminders/reminder-rule.js';
import { workDayFrom, workDayUpTo } from '../../rules/reminders/work-calendar.js';
import type { DiaryEntry } from '../diary/diary-entry.js';
import type { HeardStore } from './heard-stores.js';
import type { Covered } from './told-stores.js';

/** A store that a digest of today tells of, and how far it was told before. */
export interface TellingStore extends HeardStore {
  readonly today: Day;
  readonly rule: ReminderRule;
  readonly covered: Covered | undefined;
  /** The same by digests on working days alone: only those tell of overdue gear in store. */
  readonly coveredAtWork: Covered | undefined;
}

/** What a digest says something of. */
export interface ToldEntry {
  readonly entry: DiaryEntry;
  readonly reminder: Reminder;
  /** False of overdue gear that the person was told of as overdue before. */
  readonly fresh: boolean;
}

/**
 * Those of the entries that a person is told of today, in the order given. `since` has, by the numbers of the items,
 * the instants at which they came to fall due on their days at their stores; what is not in it has done so for long.
 */
export function toldEntries(
  entries: readonly DiaryEntry[],
  stores: readonly TellingStore[],
  since: ReadonlyMap<number, string>,
): readonly ToldEntry[] {
  const storeOf = new Map(stores.map((store) => [store.storeId, store]));
  return entries.flatMap((entry) => {
    const store = storeOf.get(entry.storeId);
    const reminder = store && reminderOf(entry, store, since.get(entry.itemId));
    if (!reminder || (store.digest === 'overdueOnly' && reminder.kind !== 'overdue')) return [];
    const fresh = !entry.overdue || isNewlyOverdue(entry, store, since.get(entry.itemId));
    return [{ entry, reminder, fresh }];
  });
}

/** How many days after today the last due day lies that any reminder of today can be about. */
export function daysAhead(rule: ReminderRule, today: Day): number {
  const nextWorkDay = workDayFrom(addDays(today, 1), rule);
  return Math.max(...rule.leadDays) + daysBetween(today, nextWorkDay) - 1;
}

function reminderOf(
  entry: DiaryEntry,
  { rule, covered }: TellingStore,
  since: string | undefined,
): Reminder | undefined {
  const { dueOn, overdue, today, jobs } = entry;
  const outOnJob = jobs.some(({ out }) => out);
  // Of what came after the last digest, the lead times that had passed by then were never told.
  const coveredThrough = !overdue && isAfter(since, covered) ? undefined : covered?.through;
  return reminderFor({ dueOn, overdue, outOnJob, today, coveredThrough, rule });
}

/** Overdue gear is told of on working days: what was in date through the last of them that was told, or came after it, is new. */
function isNewlyOverdue(
  { dueOn }: DiaryEntry,
  { rule, covered, coveredAtWork }: TellingStore,
  since: string | undefined,
): boolean {
  if (covered === undefined || dueOn >= workDayUpTo(covered.through, rule)) return true;
  return isAfter(since, coveredAtWork ?? covered);
}

function isAfter(since: string | undefined, covered: Covered | undefined): boolean {
  return since !== undefined && covered !== undefined && since > covered.at;
}
