import { Injectable } from '@nestjs/common';
import { Clock } from '../../clock.js';
import { Problem } from '../../problem.js';
import { addDays, addMonths, daysBetween, type Day } from '../../rules/calendar/day.js';
import { DEFAULT_REMINDER_RULE } from '../../rules/reminders/reminder-rule.js';
import { MONTHS_PLANNED, MOST_DAYS_EARLY } from '../../rules/reminders/visit-need.js';
import { planVisits } from '../../rules/reminders/visits.js';
import { weeklyLoad, type WeekLoad } from '../../rules/reminders/weekly-load.js';
import { Reads } from '../../storage/reads.js';
import type { StoreView } from '../../stores/stores.dto.js';
import { StoresService } from '../../stores/stores.service.js';
import { DueIndex, type DayCount } from '../due-index/due-index.service.js';
import { ReminderRules } from '../preferences/reminder-rules.service.js';
import type { DiaryEntry, DiaryJob } from './diary-entry.js';
import type { DiaryQueryDto } from './diary.dto.js';
import { DueDiary } from './diary.service.js';

/** Weeks of the picture of the months ahead: half a year, the longest common interval of lifting gear. */
const WEEKS_AHEAD = 26;

/** A visit with what it clears. */
export interface PlannedVisit {
  readonly storeId: number;
  readonly storeName: string;
  readonly on: Day;
  readonly who: DiaryEntry['who'];
  readonly entries: readonly DiaryEntry[];
  readonly savesJobs: readonly Pick<DiaryJob, 'jobId' | 'reference'>[];
}

/** What the page and the API show of the diary. */
export interface Overview {
  readonly today: Day;
  /** The last day that is looked at. */
  readonly through: Day;
  readonly stores: readonly StoreView[];
  readonly storeId: number | undefined;
  readonly monthsAhead: number;
  readonly entries: readonly DiaryEntry[];
  readonly visits: readonly PlannedVisit[];
  /** What no visit to its store reaches in time. */
  readonly notAtStore: readonly DiaryEntry[];
  /** How many of the entries may not be used before they are examined. */
  readonly overdue: number;
  /** The others, and what comes after the last day that is looked at, week by week. */
  readonly weeks: readonly WeekLoad[];
  /** How many due days are being worked out again, where they are so many that some are left out. */
  readonly catchingUp: number;
}

/** Brings together what falls due, the visits that would clear it, and how much comes in the weeks ahead. */
@Injectable()
export class DiaryOverview {
  constructor(
    private readonly reads: Reads,
    private readonly stores: StoresService,
    private readonly diary: DueDiary,
    private readonly index: DueIndex,
    private readonly rules: ReminderRules,
    private readonly clock: Clock,
  ) {}

  /** @throws Problem `not_found` of an unknown store. */
  async read({ storeId, monthsAhead = MONTHS_PLANNED }: DiaryQueryDto): Promise<Overview> {
    const stores = await this.stores.list();
    const asked = storeId === undefined ? stores : stores.filter(({ id }) => id === storeId);
    if (storeId !== undefined && asked.length === 0)
      throw new Problem('not_found', `There is no store with the number ${storeId}.`);
    const storeIds = asked.map(({ id }) => id);
    const { earliest, latest: today } = this.todays(asked);
    const through = addMonths(today, monthsAhead);
    // A visit also takes what falls due a while after it: what it clears must not depend on how far the list goes.
    const ahead = await this.entries(storeIds, { earliest, through: addDays(through, MOST_DAYS_EARLY) });
    const entries = ahead.filter(({ dueOn }) => dueOn <= through);
    const weeks = await this.load(entries, { storeIds, today, through });
    const overdue = entries.filter((entry) => entry.overdue).length;
    const catchingUp = await this.index.catchingUp(this.reads.manager);
    return {
      ...{ today, through, stores, storeId, monthsAhead, entries, overdue, weeks, catchingUp },
      ...(await this.plan(ahead, { today, through })),
    };
  }

  /** Of stores far apart some have begun the next day. No visit is suggested for a day that is over anywhere. */
  private todays(stores: readonly StoreView[]): { earliest: Day; latest: Day } {
    const days = stores.map(({ timeZone }) => this.clock.today(timeZone)).sort();
    const [earliest = this.clock.today('UTC')] = days;
    return { earliest, latest: days.at(-1) ?? earliest };
  }

  /** What falls due through one and the same day at every store. */
  private async entries(
    storeIds: readonly number[],
    { earliest, through }: { earliest: Day; through: Day },
  ): Promise<DiaryEntry[]> {
    const daysAhead = daysBetween(earliest, through);
    const entries = await this.diary.entries({ storeIds, daysAhead, newestStaleOnly: true });
    return entries.filter(({ dueOn }) => dueOn <= through);
  }

  private async plan(
    entries: readonly DiaryEntry[],
    { today, through }: Pick<Overview, 'today' | 'through'>,
  ): Promise<Pick<Overview, 'visits' | 'notAtStore'>> {
    const rules = await this.rules.all();
    const byId = new Map(entries.map((entry) => [entry.itemId, entry]));
    const calendarOf = (storeId: number) => rules.get(storeId) ?? DEFAULT_REMINDER_RULE;
    const plan = planVisits(entries, { today, calendarOf, mostDaysEarly: MOST_DAYS_EARLY });
    const references = new Map(
      entries.flatMap(({ jobs }) => jobs.map(({ jobId, reference }) => [jobId, reference] as const)),
    );
    const visits = plan.visits.map(({ storeId, on, who, itemIds, savesJobIds }) => {
      const served = new Set(itemIds);
      const cleared = entries.filter(({ itemId }) => served.has(itemId));
      const savesJobs = savesJobIds.map((jobId) => ({ jobId, reference: references.get(jobId) ?? '' }));
      return { storeId, storeName: cleared[0]?.storeName ?? '', on, who, entries: cleared, savesJobs };
    });
    const isListed = ({ dueOn }: DiaryEntry): boolean => dueOn <= through;
    return {
      visits: visits.filter(({ on, entries: cleared }) => on <= through || cleared.some(isListed)),
      notAtStore: plan.notAtStore.flatMap((itemId) => byId.get(itemId) ?? []).filter(isListed),
    };
  }

  /** Counts what is listed, so that list and picture agree, and for the weeks after it what the index points to. */
  private async load(
    entries: readonly DiaryEntry[],
    { storeIds, today, through }: { storeIds: readonly number[]; today: Day; through: Day },
  ): Promise<WeekLoad[]> {
    const listed: DayCount[] = entries
      .filter(({ overdue }) => !overdue)
      .map(({ dueOn }) => ({ dueOn, count: 1 }));
    const last = addDays(today, 7 * WEEKS_AHEAD);
    const later = await this.index.counts(this.reads.manager, { storeIds, after: through, through: last });
    return weeklyLoad([...listed, ...later], today, WEEKS_AHEAD);
  }
}
