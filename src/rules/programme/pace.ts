import type { Ticks, WorkingHours } from './working-time.js';

/** What is to be done, with whom, and how fast. Whole numbers all. */
export interface Work extends WorkingHours {
  /** All panels of the schedule. */
  readonly panels: number;
  readonly crews: number;
  /** Trucks that can be unloaded at once. */
  readonly trucksUnloading: number;
  /** Panels that may stand on trolleys at once: the pairs of trolleys at the site. Nought or none: no limit. */
  readonly panelsOnWheels?: number;
  readonly panelsPerStillage: number;
  readonly stillagesPerTruck: number;
  /** For a full load; a part load in proportion. */
  readonly unloadMinutes: number;
  /** For one panel and one crew, and the same on the first day that panels are hung. */
  readonly hangMinutes: number;
  readonly firstDayHangMinutes: number;
}

/** The figures of a work in ticks: a minute divided by the panels of a full load. All whole. */
export interface Pace {
  readonly ticksPerMinute: number;
  readonly dayTicks: Ticks;
  /** Between one panel coming off a truck and the next. */
  readonly panelOffTicks: Ticks;
  readonly hangTicks: Ticks;
  readonly firstDayHangTicks: Ticks;
  readonly crews: number;
  readonly trucksUnloading: number;
  /** Infinity where there is none. */
  readonly limit: number;
}

/**
 * The pace of a work that `checkWork` passes. A load of p panels takes m minutes, so a panel takes m ÷ p minutes,
 * which is m ticks of 1 ÷ p minute: nothing is rounded.
 */
export function paceOf(work: Work): Pace {
  const ticksPerMinute = work.panelsPerStillage * work.stillagesPerTruck;
  return {
    ticksPerMinute,
    dayTicks: work.workMinutesPerDay * ticksPerMinute,
    panelOffTicks: work.unloadMinutes,
    hangTicks: work.hangMinutes * ticksPerMinute,
    firstDayHangTicks: work.firstDayHangMinutes * ticksPerMinute,
    crews: work.crews,
    trucksUnloading: work.trucksUnloading,
    limit: work.panelsOnWheels === undefined || work.panelsOnWheels === 0 ? Infinity : work.panelsOnWheels,
  };
}

/** The working day that a point of working time belongs to, from 0; the end of one is the start of the next. */
export function dayNumber(at: Ticks, { dayTicks }: Pace): number {
  return Math.floor(at / dayTicks);
}

/** When a piece of work may begin: at once if it ends by the end of the day, or else at the next day's start. */
export function fitted(at: Ticks, length: Ticks, pace: Pace): Ticks {
  const dayEnd = (dayNumber(at, pace) + 1) * pace.dayTicks;
  return at + length <= dayEnd ? at : dayEnd;
}
