import { Injectable } from '@nestjs/common';
import { Clock } from '../../clock.js';
import { Problem } from '../../problem.js';
import { addDays, addMonths, daysBetween, type Day } from '../../rules/calendar/day.js';
import { DEFAULT_REMINDER_RULE } from '../../rules/reminders/reminder-rule.js';
import { MOST_DAYS_EARLY } from '../../rules/reminders/visit-need.js';
import { planVisits } from '../../rules/reminders/visits.js';
import { weeklyLoad, type WeekLoad } from '../../rules/reminders/weekly-load.js';
import { Reads } from '../../storage/reads.js';
import type { StoreView } from '../../stores/stores.dto.js';
import { StoresService } from '../../stores/stores.service.js';
import { DueIndex } from '../due-index/due-index.service.js';
import { ReminderRules } from '../preferences/reminder-rules.service.js';
import type { DiaryEntry, DiaryJob } from './diary-entry.js';
import type { DiaryQueryDto } from './diary.dto.js';
import { DueDiary } from './diary.service.js';

/** Weeks of the picture of the months ahead: half a year, the longest common interval of lifting gear. */
const WEEKS_AHEAD = 26;

const MONTHS_AHEAD = 3;

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
  readonly dueBeforeToday: number;
  readonly weeks: readonly WeekLoad[];
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
  async read({ storeId, monthsAhead = MONTHS_AHEAD }: DiaryQueryDto): Promise<Overview> {
    const stores = await this.stores.list();
    const asked = storeId === undefined ? stores : stores.filter(({ id }) => id === storeId);
    if (storeId !== undefined && asked.length === 0)
      throw new Problem('not_found', `There is no store with the number ${storeId}.`);
    const storeIds = asked.map(({ id }) => id);
    const today = this.latestToday(asked);
    const through = addMonths(today, monthsAhead);
    const entries = await this.diary.entries({ storeIds, daysAhead: daysBetween(today, through) });
    return {
      ...{ today, through, stores, storeId, monthsAhead, entries },
      ...(await this.plan(entries, today)),
      ...(await this.load(storeIds, today)),
    };
  }

  /** No visit is suggested for a day that is over anywhere. */
  private latestToday(stores: readonly StoreView[]): Day {
    const days = stores.map(({ timeZone }) => this.clock.today(timeZone)).sort();
    return days.at(-1) ?? this.clock.today('UTC');
  }

  private async plan(
    entries: readonly DiaryEntry[],
    today: Day,
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
    return { visits, notAtStore: plan.notAtStore.flatMap((itemId) => byId.get(itemId) ?? []) };
  }

  private async load(
    storeIds: readonly number[],
    today: Day,
  ): Promise<Pick<Overview, 'dueBeforeToday' | 'weeks'>> {
    const through = addDays(today, 7 * WEEKS_AHEAD);
    const counts = await this.index.counts(this.reads.manager, { storeIds, through });
    const { overdue, weeks } = weeklyLoad(counts, today, WEEKS_AHEAD);
    return { dueBeforeToday: overdue, weeks };
  }
}
