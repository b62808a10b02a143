import type { Day } from '../calendar/day.js';
import type { WorkCalendar } from './work-calendar.js';

/** A job that an item is promised to (`out` false) or out on, in days, both included. */
export interface VisitJob {
  readonly jobId: number;
  readonly from: Day;
  readonly to: Day;
  readonly out: boolean;
}

/** One item that has to be examined, as it stands today. */
export interface VisitNeed {
  readonly itemId: number;
  readonly storeId: number;
  readonly who: 'inspector' | 'competentPerson';
  readonly dueOn: Day;
  /** True when it may no longer be used, so that no promised job takes it out of the store. */
  readonly overdue: boolean;
  readonly jobs: readonly VisitJob[];
}

/** An examination so many days before its due day gives little time away. Common practice, no source. */
export const MOST_DAYS_EARLY = 42;

/** Visits are planned by what falls due within so many months, and by what they may take along after that. */
export const MONTHS_PLANNED = 3;

/** What visits are planned by, beside the needs. */
export interface VisitTerms {
  readonly today: Day;
  readonly calendarOf: (storeId: number) => WorkCalendar;
  /** How many days before its due day an item may be examined: earlier gives away time that was paid for. */
  readonly mostDaysEarly: number;
}

/** The jobs promised to the item that cannot use it unless it is examined first: they run past its due day. */
export function jobsAtStake({ jobs, dueOn, overdue }: VisitNeed, today: Day): VisitJob[] {
  return jobs.filter(({ to, out }) => !out && (overdue ? to >= today : to > dueOn));
}
