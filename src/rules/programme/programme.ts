import type { Calculated, CalculationProblem } from '../calculations/calculation.js';
import { isDay, type Day } from '../calendar/day.js';
import { alternatives } from './alternatives.js';
import { checkTruckTimes, checkWork, outOfBounds } from './check-work.js';
import { dayNumber, paceOf, type Pace } from './pace.js';
import { planTrucks } from './plan-trucks.js';
import type { People, Programme, ProgrammeInput } from './programme-figures.js';
import { programmeWorkings } from './programme-workings.js';
import type { Run } from './simulate.js';
import { truckloads } from './truckloads.js';
import { dayOf, firstDayOf, isLocalTime, siteClock, toTicks } from './working-time.js';
import { checkWindow } from './window-check.js';
import { addWorkDays } from './work-week.js';

const PEOPLE_AND_DAYS = {
  personsAtGround: [1, 50],
  personsAloft: [0, 50],
  drivers: [1, 50],
  unloadPersons: [1, 50],
  setUpDays: [0, 365],
  clearDays: [0, 365],
} as const;

/**
 * The programme of a work: loads, truck times, trolleys, people, days, and what one more crew or ten more trolleys
 * would change. All figures of the trade are parameters; the durations are common practice, no source.
 *
 * Problems: a figure outside its bounds, a truck time that cannot be used, a load or a cycle longer than a day, or
 * too few trolleys for the work ever to end.
 */
export function programme(input: ProgrammeInput): Calculated<Programme> {
  const problems = checkProgramme(input);
  if (problems.length > 0) return { ok: false, problems };
  const pace = paceOf(input);
  const stated = input.truckTimes.flatMap((time) => ticksOf(time, pace, input) ?? []);
  const plan = planTrucks(input, stated);
  if (!plan.ok) return { ok: false, problems: [neverEnds(plan)] };
  const figures = programmeOf(input, pace, stated, plan.run);
  return { ok: true, figures, workings: programmeWorkings(input, figures) };
}

function checkProgramme(input: ProgrammeInput): CalculationProblem[] {
  const work = checkWork(input);
  const others = outOfBounds(input, PEOPLE_AND_DAYS);
  const { from, to } = input.window;
  if (!isDay(from) || !isDay(to) || to < from)
    others.push({ code: 'parameter_out_of_range', subject: 'window' });
  return [...work, ...others, ...(work.length === 0 ? checkTruckTimes(input.truckTimes, input) : [])];
}

function neverEnds({ needed, has }: { needed: number; has: number }): CalculationProblem {
  return { code: 'work_never_ends', subject: 'panelsOnWheels', needed: String(needed), has: String(has) };
}

function ticksOf(time: string, pace: Pace, input: ProgrammeInput): number | undefined {
  return isLocalTime(time) ? toTicks(time, pace.ticksPerMinute, input) : undefined;
}

function programmeOf(input: ProgrammeInput, pace: Pace, stated: readonly number[], run: Run): Programme {
  const at = siteClock(input, pace.ticksPerMinute);
  const firstDay = dayOf(at(run.trucks[0]?.beginsAt ?? 0, 'begins'));
  const days = daysOf(run, pace, input);
  const lastDay = days.at(-1) ?? firstDay;
  return {
    truckloads: truckloads(input.panels, pace.ticksPerMinute),
    trucks: run.trucks.map((truck) => ({
      truck: truck.truck,
      panels: truck.panels,
      stated: truck.truck <= stated.length,
      arrives: at(truck.arrivesAt, 'begins'),
      begins: at(truck.beginsAt, 'begins'),
      empty: at(truck.emptyAt, 'ends'),
      mostOnWheels: truck.mostOnWheels,
      exceedsLimit: truck.exceedsLimit,
    })),
    mostOnWheels: run.most.panelsOnWheels,
    trolleys: run.most.panelsOnWheels * 2,
    trolleysBeforeFirstTruck: run.mostByFirstEmpty * 2,
    finishes: at(run.finishesAt, 'ends'),
    firstDay,
    lastDay,
    workingDays: days.length - days.indexOf(firstDay),
    hangingMinutesPerCrew: hangingMinutes(input, run),
    people: peopleOf(input),
    window: checkWindow({ ...input, firstDay, lastDay }),
    alternatives: alternatives(input, stated, run).map(({ change, crews, panelsOnWheels, run: other }) => ({
      change,
      crews,
      panelsOnWheels,
      finishes: at(other.finishesAt, 'ends'),
      lastTruckArrives: at(other.trucks.at(-1)?.arrivesAt ?? 0, 'begins'),
    })),
    notices: input.truckTimes
      .slice(run.trucks.length)
      .map((subject) => ({ code: 'truck_not_needed', subject })),
    run,
    pace,
    days,
  };
}

/** Every working day from the first of the site through the last of the run. The last tick of a day is still of that day. */
function daysOf(run: Run, pace: Pace, input: ProgrammeInput): Day[] {
  const first = firstDayOf(input);
  const count = dayNumber(run.finishesAt - 1, pace) + 1;
  return Array.from({ length: count }, (_, day) => addWorkDays(first, day, input.workDaysPerWeek));
}

/** The first crew hangs the first panel, and one in every `crews` after it: as many as any, and as many slow ones. */
function hangingMinutes(input: ProgrammeInput, run: Run): number {
  const [all, slow] = [Math.ceil(input.panels / input.crews), Math.ceil(run.firstDayPanels / input.crews)];
  return slow * input.firstDayHangMinutes + (all - slow) * input.hangMinutes;
}

function peopleOf(input: ProgrammeInput): People {
  return {
    ground: input.personsAtGround * input.crews,
    aloft: input.personsAloft * input.crews,
    drivers: input.drivers * input.crews,
    unloading: input.unloadPersons * input.trucksUnloading,
  };
}
