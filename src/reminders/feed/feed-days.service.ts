import { Injectable } from '@nestjs/common';
import { Clock } from '../../clock.js';
import { addDays, type Day } from '../../rules/calendar/day.js';
import { Reads } from '../../storage/reads.js';
import { digestInstant } from '../../rules/reminders/digest-time.js';
import { DueDiary } from '../diary/diary.service.js';
import type { DiaryEntry } from '../diary/diary-entry.js';
import { changedDays, type ChangedDay } from '../due-index/changed-days.js';
import type { FeedDay, FeedStore } from './feed-day.js';
import { overdueDay } from './overdue-day.js';

/** A year ahead and the month after it: what is examined once a year is seen before it is examined. */
export const DAYS_AHEAD = 400;
/** Days that are over stay in the calendar for a year, as far as anything of them is still to be done. */
export const DAYS_BACK = 365;
/** Events that are off are told of for so long: a calendar that has not looked for longer starts anew. */
const TOLD_OFF_DAYS = 60;

/** What the calendar of some stores shows: the diary, day by day, with what the days have lived through. */
@Injectable()
export class FeedDays {
  constructor(
    private readonly reads: Reads,
    private readonly diary: DueDiary,
    private readonly clock: Clock,
  ) {}

  /**
   * One event for each day on which something of a store falls due, from a year ago to 400 days ahead, one for all
   * that is overdue today, and those that were called off in the last 60 days.
   */
  async of(stores: readonly FeedStore[]): Promise<FeedDay[]> {
    const storeIds = stores.map(({ id }) => id);
    const entries =
      storeIds.length === 0
        ? []
        : await this.diary.entries({ storeIds, daysAhead: DAYS_AHEAD, newestStaleOnly: true });
    const days: FeedDay[] = [];
    for (const store of stores)
      days.push(
        ...(await this.ofStore(
          store,
          entries.filter(({ storeId }) => storeId === store.id),
        )),
      );
    return days;
  }

  private async ofStore(store: FeedStore, entries: readonly DiaryEntry[]): Promise<FeedDay[]> {
    const now = this.clock.now();
    const today = this.clock.today(store.timeZone);
    const [from, through] = [addDays(today, -DAYS_BACK), addDays(today, DAYS_AHEAD)];
    const changed = await changedDays(this.reads.manager, { storeId: store.id, from, through });
    const toldOffSince = digestInstant(addDays(today, -TOLD_OFF_DAYS), '00:00', store.timeZone);
    const recent = changed.filter(({ changedAt }) => changedAt >= toldOffSince);
    const due = dueDays({ store, today, from, entries, changed, recent, now });
    const overdue = overdueDay({ store, today, entries, recent });
    return overdue === undefined ? due : [overdue, ...due];
  }
}

function dueDays({
  store,
  today,
  from,
  entries,
  changed,
  recent,
  now,
}: {
  store: FeedStore;
  today: Day;
  from: Day;
  entries: readonly DiaryEntry[];
  changed: readonly ChangedDay[];
  recent: readonly ChangedDay[];
  now: string;
}): FeedDay[] {
  const byDay = new Map<Day, DiaryEntry[]>();
  for (const entry of entries) if (entry.dueOn >= from) append(byDay, entry);
  const lived = new Map(changed.map((day) => [day.on, day]));
  return [...new Set([...byDay.keys(), ...recent.map(({ on }) => on)])].sort().map((on) => {
    // A day that the index has not seen yet is as new as can be.
    const { sequence, changedAt } = lived.get(on) ?? { sequence: 0, changedAt: now };
    const pastSince = digestInstant(addDays(on, 1), '00:00', store.timeZone);
    return {
      ...{ store, on, today, sequence },
      key: `due-${store.id}-${on}`,
      kind: 'due' as const,
      entries: byDay.get(on) ?? [],
      // Once the day is over the event says so, which is a change though nothing of the gear changed.
      changedAt: on < today && pastSince > changedAt ? pastSince : changedAt,
    };
  });
}

function append(byDay: Map<Day, DiaryEntry[]>, entry: DiaryEntry): void {
  const known = byDay.get(entry.dueOn);
  if (known) known.push(entry);
  else byDay.set(entry.dueOn, [entry]);
}
