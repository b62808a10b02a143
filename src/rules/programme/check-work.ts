import type { CalculationProblem } from '../calculations/calculation.js';
import { isDay } from '../calendar/day.js';
import { Exact } from '../quantities/exact.js';
import type { Work } from './pace.js';
import { isLocalTime, toTicks, type LocalTime } from './working-time.js';

/** The whole numbers that a figure may be, least and most. Beyond them lies a slip of the pen, not a site. */
export type Bounds<Field extends string> = Readonly<Record<Field, readonly [least: number, most: number]>>;

const WORK_BOUNDS = {
  panels: [1, 100_000],
  crews: [1, 50],
  trucksUnloading: [1, 20],
  panelsOnWheels: [0, 100_000],
  panelsPerStillage: [1, 100],
  stillagesPerTruck: [1, 50],
  unloadMinutes: [1, 1440],
  hangMinutes: [1, 1440],
  firstDayHangMinutes: [1, 1440],
  dayStartMinutes: [0, 1439],
  workMinutesPerDay: [1, 1440],
  workDaysPerWeek: [5, 7],
} as const;

/** Everything that keeps a work from being run. Of a work without problems, `paceOf` and all that follows may be asked. */
export function checkWork(work: Work): CalculationProblem[] {
  const problems = outOfBounds({ ...work, panelsOnWheels: work.panelsOnWheels ?? 0 }, WORK_BOUNDS);
  if (!isDay(work.firstWorkDay)) problems.push({ code: 'parameter_out_of_range', subject: 'firstWorkDay' });
  return problems.length > 0 ? problems : [...checkTogether(work), ...checkLengths(work)];
}

/** A problem for each figure that is not a whole number within its bounds, with the bound that it passes. */
export function outOfBounds<Field extends string>(
  figures: Readonly<Record<NoInfer<Field>, number>>,
  bounds: Bounds<Field>,
): CalculationProblem[] {
  const fields = Object.keys(bounds) as Field[];
  return fields.flatMap((field) => {
    const [figure, [least, most]] = [figures[field], bounds[field]];
    if (Number.isInteger(figure) && figure >= least && figure <= most) return [];
    const problem = { code: 'parameter_out_of_range', subject: field } as const;
    if (!Number.isFinite(figure)) return [problem];
    return [{ ...problem, needed: String(figure > most ? most : least), has: Exact.of(figure).toString() }];
  });
}

/** Figures that are each possible, but not with each other: a day past midnight, and a first day quicker than the rest. */
function checkTogether(work: Work): CalculationProblem[] {
  const problems: CalculationProblem[] = [];
  const toMidnight = 1440 - work.dayStartMinutes;
  if (work.workMinutesPerDay > toMidnight)
    problems.push(minutes('parameter_out_of_range', 'workMinutesPerDay', toMidnight, work.workMinutesPerDay));
  if (work.firstDayHangMinutes < work.hangMinutes)
    problems.push(
      minutes('parameter_out_of_range', 'firstDayHangMinutes', work.hangMinutes, work.firstDayHangMinutes),
    );
  return problems;
}

/** Each piece of work must end on the day it is begun. */
function checkLengths(work: Work): CalculationProblem[] {
  const perLoad = work.panelsPerStillage * work.stillagesPerTruck;
  const fullestLoad = Math.min(work.panels, perLoad);
  const unloading = Exact.of(work.unloadMinutes * fullestLoad).dividedBy(Exact.of(perLoad), {
    places: 6,
    rounding: 'up',
  });
  const lengths = [
    ['unloadMinutes', unloading],
    ['hangMinutes', Exact.of(work.hangMinutes)],
    ['firstDayHangMinutes', Exact.of(work.firstDayHangMinutes)],
  ] as const;
  const day = Exact.of(work.workMinutesPerDay);
  return lengths
    .filter(([, length]) => day.isLessThan(length))
    .map(([subject, length]) => minutes('load_longer_than_day', subject, length, day));
}

function minutes(
  code: 'parameter_out_of_range' | 'load_longer_than_day',
  subject: string,
  needed: number | Exact,
  has: number | Exact,
): CalculationProblem {
  return { code, subject, needed: needed.toString(), has: has.toString(), unit: 'min' };
}

/**
 * Everything that keeps stated truck times from being used: not a time, not after the one before it, or outside the
 * working hours of a work that `checkWork` passes.
 */
export function checkTruckTimes(times: readonly string[], work: Work): CalculationProblem[] {
  let latest: LocalTime | undefined;
  return times.flatMap((time): CalculationProblem[] => {
    if (!isLocalTime(time)) return [{ code: 'truck_time_unreadable', subject: time }];
    if (latest !== undefined && time < latest) return [{ code: 'truck_time_unreadable', subject: time }];
    latest = time;
    return toTicks(time, 1, work) === undefined
      ? [{ code: 'truck_outside_working_hours', subject: time }]
      : [];
  });
}
