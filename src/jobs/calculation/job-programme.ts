import type { Calculated } from '../../rules/calculations/calculation.js';
import { figuresOf, jobParameters } from '../../rules/calculations/job-parameters.js';
import { usedBy } from '../../rules/calculations/calculations.js';
import type { ParameterKey } from '../../rules/calculations/parameter.js';
import { toDay } from '../../rules/calendar/day.js';
import type { MethodDefinition } from '../../rules/lines/method.js';
import type { Programme } from '../../rules/programme/programme-figures.js';
import { programme } from '../../rules/programme/programme.js';
import { addWorkDays, workDayFrom } from '../../rules/programme/work-week.js';
import type { JobEntity } from '../job.entity.js';

/** What of a job decides the programme of its work. */
export type ProgrammeFacts = Pick<
  JobEntity,
  'loadOutDay' | 'backDay' | 'counts' | 'panels' | 'parameters' | 'truckTimes'
>;

/** The programme of a job's work; undefined where its method works none out. Work begins once the site is set up. */
export function jobProgramme(
  job: ProgrammeFacts,
  method: MethodDefinition,
): Calculated<Programme> | undefined {
  if (!method.calculations.includes('programme')) return undefined;
  const figures = figuresOf(jobParameters(method, job.parameters), usedBy('programme'));
  if (!figures.ok) return figures;
  const whole = (key: ParameterKey): number => figures.of(key).toNumber();
  const workDaysPerWeek = whole('workDaysPerWeek');
  const setUpDays = whole('setUpDays');
  const firstDay = workDayFrom(toDay(job.loadOutDay), workDaysPerWeek);
  return programme({
    panels: job.panels.reduce((sum, { count }) => sum + count, 0),
    crews: job.counts.crews,
    trucksUnloading: Math.max(1, job.counts.trucksUnloading),
    panelsOnWheels: job.counts.panelsOnWheels,
    panelsPerStillage: whole('panelsPerStillage'),
    stillagesPerTruck: whole('stillagesPerTruck'),
    unloadMinutes: whole('unloadMinutes'),
    hangMinutes: whole('hangMinutes'),
    firstDayHangMinutes: whole('firstDayHangMinutes'),
    dayStartMinutes: whole('dayStartMinutes'),
    workMinutesPerDay: whole('workMinutesPerDay'),
    workDaysPerWeek,
    firstWorkDay: addWorkDays(firstDay, setUpDays, workDaysPerWeek),
    truckTimes: job.truckTimes,
    personsAtGround: whole('personsAtGround'),
    personsAloft: whole('personsAloft'),
    drivers: whole('drivers'),
    unloadPersons: whole('unloadPersons'),
    window: { from: toDay(job.loadOutDay), to: toDay(job.backDay) },
    setUpDays,
    clearDays: whole('clearDays'),
  });
}
