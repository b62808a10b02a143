import type { CalculationProblem } from '../calculations/calculation.js';
import type { Day } from '../calendar/day.js';
import type { Change } from './alternatives.js';
import type { Pace, Work } from './pace.js';
import type { Run } from './simulate.js';
import type { Window, WindowCheck } from './window-check.js';
import type { LocalTime } from './working-time.js';

/** What a programme is made from: the work, the trucks that are ordered, the people of a crew, the days of the job. */
export interface ProgrammeInput extends Work {
  /** When trucks are ordered to arrive, `2026-12-01T08:30`, in order. Those that are missing come as early as they may. */
  readonly truckTimes: readonly string[];
  /** Of each crew. */
  readonly personsAtGround: number;
  readonly personsAloft: number;
  readonly drivers: number;
  /** At each place for unloading, beside the crews. */
  readonly unloadPersons: number;
  readonly window: Window;
  readonly setUpDays: number;
  readonly clearDays: number;
}

/** One truck as the crew leader reads it. Times are in whole minutes, rounded up. */
export interface TruckTimes {
  readonly truck: number;
  readonly panels: number;
  /** True where the time of arrival was handed in, false where it is the earliest that the limit allows. */
  readonly stated: boolean;
  readonly arrives: LocalTime;
  readonly begins: LocalTime;
  readonly empty: LocalTime;
  readonly mostOnWheels: number;
  readonly exceedsLimit: boolean;
}

/** One row of the table of alternatives. */
export interface AlternativeRow {
  readonly change: Change;
  readonly crews: number;
  readonly panelsOnWheels: number;
  readonly finishes: LocalTime;
  readonly lastTruckArrives: LocalTime;
}

/** The people that the work needs at once, by trade. */
export interface People {
  readonly ground: number;
  readonly aloft: number;
  readonly drivers: number;
  readonly unloading: number;
}

/** The programme of a work. */
export interface Programme {
  readonly truckloads: readonly number[];
  readonly trucks: readonly TruckTimes[];
  readonly mostOnWheels: number;
  readonly trolleys: number;
  /** The trolleys that must stand ready before the first truck comes. */
  readonly trolleysBeforeFirstTruck: number;
  readonly finishes: LocalTime;
  /** The first day that a truck is unloaded, the last that a panel is hung, and the working days from one through the other. */
  readonly firstDay: Day;
  readonly lastDay: Day;
  readonly workingDays: number;
  /** Working time of hanging of the crew that hangs most. */
  readonly hangingMinutesPerCrew: number;
  readonly people: People;
  readonly window: WindowCheck;
  readonly alternatives: readonly AlternativeRow[];
  /** What does not stop the programme, but must be said: trucks that are ordered and not needed. */
  readonly notices: readonly CalculationProblem[];
  /** For the plot: the run itself, the ticks it is measured in, and the working days it goes over. */
  readonly run: Run;
  readonly pace: Pace;
  readonly days: readonly Day[];
}
