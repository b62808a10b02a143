import { addDays, earliest, type Day } from '../calendar/day.js';
import { jobsAtStake, type VisitJob, type VisitNeed, type VisitTerms } from './visit-need.js';
import { isWorkDay, workDayFrom } from './work-calendar.js';

/** The days on which a visit serves an item. */
export interface VisitWindow {
  /** It may be past: no visit is planned for a day that is. */
  readonly first: Day;
  /** A working day on which the item is in its store. */
  readonly last: Day;
  /** The jobs whose days in between it is not in its store. */
  readonly away: readonly VisitJob[];
}

/**
 * When an item can be examined at its store: in time, and at most `mostDaysEarly` before its due day. In time is by
 * its due day and before the first job that it would stop. Where only days earlier than that are left, the last of
 * them; where no working day is left, the first on which it is in the store, however late. Undefined when it is out
 * until it is due, or should be back and is not.
 */
export function visitWindow(need: VisitNeed, terms: VisitTerms): VisitWindow | undefined {
  if (isOutUntilDue(need, terms.today)) return undefined;
  const away = jobsAway(need, terms.today);
  const days = { ...terms, away };
  const last = lastInTime(need, days) ?? firstOfAll(need, days);
  const notBefore = addDays(need.dueOn, -terms.mostDaysEarly);
  return { first: earliest([last, notBefore]) ?? last, last, away };
}

/** True when the item can be examined on a working day of its store. */
export function servesOn({ first, last, away }: VisitWindow, day: Day): boolean {
  return first <= day && day <= last && !isAway(day, away);
}

interface VisitDays extends VisitTerms {
  readonly away: readonly VisitJob[];
}

/** The jobs whose days the item is not in the store: those it would stop do not take it along. */
function jobsAway(need: VisitNeed, today: Day): VisitJob[] {
  const atStake = jobsAtStake(need, today);
  return need.jobs.filter((job) => job.out || !atStake.includes(job));
}

function isOutUntilDue({ jobs, dueOn, overdue }: VisitNeed, today: Day): boolean {
  return jobs.some(({ out, to }) => out && (overdue || isOverrun(to, today) || to >= dueOn));
}

/** Gear that should be back and is not: nobody can say when it will be in the store. */
function isOverrun(to: Day, today: Day): boolean {
  return to < today;
}

function lastInTime(need: VisitNeed, { today, away, calendarOf }: VisitDays): Day | undefined {
  // What is overdue is late whatever is done.
  if (need.overdue) return undefined;
  const firstStopped = earliest(jobsAtStake(need, today).map(({ from }) => addDays(from, -1)));
  let day = earliest([need.dueOn, ...(firstStopped === undefined ? [] : [firstStopped])]) ?? need.dueOn;
  for (; day >= today; day = addDays(day, -1))
    if (isWorkDay(day, calendarOf(need.storeId)) && !isAway(day, away)) return day;
  return undefined;
}

function firstOfAll({ storeId }: VisitNeed, { today, away, calendarOf }: VisitDays): Day {
  let day = workDayFrom(today, calendarOf(storeId));
  for (;;) {
    const job = away.find(({ from, to }) => from <= day && day <= to);
    if (job === undefined) return day;
    day = workDayFrom(addDays(job.to, 1), calendarOf(storeId));
  }
}

function isAway(day: Day, away: readonly VisitJob[]): boolean {
  return away.some(({ from, to }) => from <= day && day <= to);
}
