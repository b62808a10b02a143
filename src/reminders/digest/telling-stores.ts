import { addDays, type Day } from '../../rules/calendar/day.js';
import type { ReminderRule } from '../../rules/reminders/reminder-rule.js';
import { isWorkDay } from '../../rules/reminders/work-calendar.js';
import type { HeardStore } from './heard-stores.js';
import type { TellingStore } from './told-entries.js';
import { covered, tellsToday, type PastRun } from './told-stores.js';

/** A store with its day and its rule. */
export interface StoreToday {
  readonly storeId: number;
  readonly timeZone: string;
  readonly today: Day;
  readonly rule: ReminderRule;
}

/** Those of a person's stores that a digest of today tells of, each with how far it was told before. */
export function tellingStores(
  heard: readonly HeardStore[],
  {
    stores,
    runs,
    since,
  }: {
    stores: ReadonlyMap<number, StoreToday>;
    runs: readonly PastRun[];
    /** The first day on which a digest of the person was decided. */
    since: Day | undefined;
  },
): TellingStore[] {
  return heard.flatMap((one) => {
    const store = stores.get(one.storeId);
    if (!store) return [];
    const { today, rule } = store;
    const last = covered(runs, one);
    const toldThrough = last?.through ?? addDays(since ?? today, -1);
    if (!tellsToday(one.digest, { today, toldThrough, rule })) return [];
    const coveredAtWork = covered(runs, one, (day) => isWorkDay(day, rule));
    return [{ ...one, today, rule, covered: last, coveredAtWork }];
  });
}
