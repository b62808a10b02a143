import { addDays, isDay, type Day } from '../calendar/day.js';
import { addWorkDays, isWorkDay, workDaysThrough, workDayFrom, type WorkDaysPerWeek } from './work-week.js';

declare const localTimeBrand: unique symbol;

/** A minute on the clock of the site, `2026-12-01T08:30`. No zone. Times compare correctly as strings. */
export type LocalTime = string & { readonly [localTimeBrand]: true };

/** True for a minute that exists, written `YYYY-MM-DDTHH:MM`. */
export function isLocalTime(text: string): text is LocalTime {
  const match = /^(\d{4}-\d\d-\d\d)T([01]\d|2[0-3]):[0-5]\d$/.exec(text);
  return match?.[1] !== undefined && isDay(match[1]);
}

/** When a site works. */
export interface WorkingHours {
  /** The first day of the work; where the site does not work on it, the next day on which it does. */
  readonly firstWorkDay: Day;
  readonly workDaysPerWeek: WorkDaysPerWeek;
  /** From midnight. */
  readonly dayStartMinutes: number;
  readonly workMinutesPerDay: number;
}

/**
 * A point of working time: whole ticks since the start of the first working day, with nights and days off left out.
 * A tick is a minute divided by the panels of a full load, so that every panel comes off its truck at a whole tick.
 */
export type Ticks = number;

/** The first working day of a site, from which ticks are counted. */
export function firstDayOf(hours: WorkingHours): Day {
  return workDayFrom(hours.firstWorkDay, hours.workDaysPerWeek);
}

/** The clock of a site: gives the clock time of a point of working time, in whole minutes, rounded up. */
export type SiteClock = (at: Ticks, edge: 'begins' | 'ends') => LocalTime;

/**
 * The clock of a site. The end of one working day and the start of the next are the same point of working time, so
 * it is asked whether something begins or ends there. Days are worked out once each.
 */
export function siteClock(hours: WorkingHours, ticksPerMinute: number): SiteClock {
  const firstDay = firstDayOf(hours);
  const known = new Map<number, Day>();
  return (at, edge) => {
    const minutes = Math.ceil(at / ticksPerMinute);
    const whole = Math.floor(minutes / hours.workMinutesPerDay);
    const onEdge = edge === 'ends' && whole > 0 && minutes === whole * hours.workMinutesPerDay;
    const days = onEdge ? whole - 1 : whole;
    const day = known.get(days) ?? addWorkDays(firstDay, days, hours.workDaysPerWeek);
    known.set(days, day);
    return localTime(day, hours.dayStartMinutes + minutes - days * hours.workMinutesPerDay);
  };
}

/** The point of working time of a time on the clock, or undefined for one outside working hours. */
export function toTicks(time: LocalTime, ticksPerMinute: number, hours: WorkingHours): Ticks | undefined {
  const day = dayOf(time);
  const minutes = minutesOfDay(time) - hours.dayStartMinutes;
  if (day < firstDayOf(hours) || !isWorkDay(day, hours.workDaysPerWeek)) return undefined;
  if (minutes < 0 || minutes >= hours.workMinutesPerDay) return undefined;
  const days = workDaysThrough(firstDayOf(hours), day, hours.workDaysPerWeek) - 1;
  return (days * hours.workMinutesPerDay + minutes) * ticksPerMinute;
}

/** The day of a time. */
export function dayOf(time: LocalTime): Day {
  return time.slice(0, 10) as Day;
}

/** The minutes since midnight of a time. */
function minutesOfDay(time: LocalTime): number {
  return Number(time.slice(11, 13)) * 60 + Number(time.slice(14));
}

/** The minute 1440 of a day is the first of the next. */
function localTime(day: Day, minutes: number): LocalTime {
  if (minutes === 1440) return localTime(addDays(day, 1), 0);
  const [hour, minute] = [Math.floor(minutes / 60), minutes % 60];
  return `${day}T${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')}` as LocalTime;
}
