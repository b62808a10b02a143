import type { Day } from '../calendar/day.js';
import { addWorkDays, workDaysThrough, type WorkDaysPerWeek } from './work-week.js';

/** The days that a job has, both included. */
export interface Window {
  readonly from: Day;
  readonly to: Day;
}

/** Whether the work, with setting up before and clearing after, keeps within the days that the job has. */
export interface WindowCheck {
  readonly fits: boolean;
  /** Working days from the start of setting up through the end of clearing. */
  readonly neededDays: number;
  /** Working days in the window. */
  readonly hasDays: number;
  readonly startsOn: Day;
  readonly endsOn: Day;
}

/**
 * Holds the days of the work against a window. Setting up takes the working days just before `firstDay`, clearing
 * those just after `lastDay`; both of these are working days.
 */
export function checkWindow(given: {
  firstDay: Day;
  lastDay: Day;
  setUpDays: number;
  clearDays: number;
  window: Window;
  workDaysPerWeek: WorkDaysPerWeek;
}): WindowCheck {
  const { firstDay, lastDay, setUpDays, clearDays, window, workDaysPerWeek } = given;
  const startsOn = addWorkDays(firstDay, -setUpDays, workDaysPerWeek);
  const endsOn = addWorkDays(lastDay, clearDays, workDaysPerWeek);
  return {
    fits: window.from <= startsOn && endsOn <= window.to,
    neededDays: workDaysThrough(startsOn, endsOn, workDaysPerWeek),
    hasDays: workDaysThrough(window.from, window.to, workDaysPerWeek),
    startsOn,
    endsOn,
  };
}
