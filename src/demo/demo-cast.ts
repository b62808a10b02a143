import type { Actor } from '../people/actor.js';
import type { Day } from '../rules/calendar/day.js';

/** The people who act in the scenario. */
export interface DemoCast {
  readonly storeman: Actor;
  readonly crew: Actor;
  readonly examiner: Actor;
}

/** Midday of a day in UTC: the same day in the demo's time zone, summer and winter. */
export function noonOf(day: Day): string {
  return `${day}T12:00:00.000Z`;
}

/** Early on a day, in UTC: when the day's mail has just been made in the demo's time zone, summer and winter. */
export function earlyOn(day: Day): string {
  return `${day}T06:05:00.000Z`;
}
