import { daysBetween, toDay, type Day } from '../../rules/calendar/day.js';
import { digestInstant } from '../../rules/reminders/digest-time.js';
import type { DiaryEntry } from '../diary/diary-entry.js';
import type { ChangedDay } from '../due-index/changed-days.js';
import type { FeedDay, FeedStore } from './feed-day.js';

/** Counting days from here gives each day a larger number than the one before. */
const FIRST_DAY = toDay('2020-01-01');

/**
 * The event of all that is overdue at a store, which stands on today and moves on with it: a day that is over is
 * looked at by nobody. It is off when something was overdue lately and nothing is any more.
 */
export function overdueDay({
  store,
  today,
  entries,
  recent,
}: {
  store: FeedStore;
  today: Day;
  entries: readonly DiaryEntry[];
  recent: readonly ChangedDay[];
}): FeedDay | undefined {
  const overdue = entries.filter((entry) => entry.overdue);
  const past = recent.filter(({ on }) => on <= today).map(({ changedAt }) => changedAt);
  if (overdue.length === 0 && past.length === 0) return undefined;
  const movedAt = digestInstant(today, '00:00', store.timeZone);
  return {
    ...{ store, today, entries: overdue },
    key: `overdue-${store.id}`,
    kind: 'overdue',
    on: today,
    sequence: daysBetween(FIRST_DAY, today),
    changedAt: [movedAt, ...past].sort().at(-1) ?? movedAt,
  };
}
