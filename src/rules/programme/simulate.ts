import { Hanging } from './hanging.js';
import { mostOnWheels, onWheelsAt, onWheelsSteps, type OnWheelsStep } from './on-wheels.js';
import type { Pace } from './pace.js';
import { panelsOff, unloadingBegins, unloadTicks } from './unloading.js';
import type { Ticks } from './working-time.js';

/** One truck of a run, numbered from 1. */
export interface TruckRun {
  readonly truck: number;
  readonly panels: number;
  readonly arrivesAt: Ticks;
  /** When it begins to unload. */
  readonly beginsAt: Ticks;
  readonly emptyAt: Ticks;
  readonly onWheelsWhenEmpty: number;
  /** The most on wheels at a moment when one of its panels comes off. */
  readonly mostOnWheels: number;
  /** True where that passes the limit. */
  readonly exceedsLimit: boolean;
}

/** One panel of a run, in the order that panels come off. */
export interface PanelRun {
  readonly truck: number;
  readonly offAt: Ticks;
  readonly begunAt: Ticks;
  readonly hungAt: Ticks;
}

/** How a work runs when trucks arrive as given. */
export interface Run {
  readonly trucks: readonly TruckRun[];
  readonly panels: readonly PanelRun[];
  readonly steps: readonly OnWheelsStep[];
  /** The first moment with the most panels on wheels. */
  readonly most: OnWheelsStep;
  /** The most on wheels by the moment the first truck is empty: what must stand ready before it comes. */
  readonly mostByFirstEmpty: number;
  readonly finishesAt: Ticks;
  /** How many panels were hung at the pace of the first day. */
  readonly firstDayPanels: number;
}

/**
 * Runs the work: trucks unload first come first served, panels come off evenly, crews hang them in the order they
 * come off, and nothing is begun that would not end by the end of its day.
 * @param arrivals one for each load, none before the one in front of it.
 */
export function simulate(arrivals: readonly Ticks[], loads: readonly number[], pace: Pace): Run {
  const begins = unloadingBegins(arrivals, loads, pace);
  const off = begins
    .flatMap((at, truck) =>
      panelsOff(at, loads[truck] ?? 0, pace).map((offAt) => ({ truck: truck + 1, offAt })),
    )
    .sort((left, right) => left.offAt - right.offAt || left.truck - right.truck);
  const hanging = new Hanging(pace);
  for (const { offAt } of off) hanging.hang(offAt);
  const panels = off.map((panel, place) => ({
    ...panel,
    begunAt: hanging.begun[place] ?? 0,
    hungAt: hanging.hung[place] ?? 0,
  }));
  const offTimes = off.map(({ offAt }) => offAt);
  const steps = onWheelsSteps(offTimes, hanging.hung);
  const trucks = truckRuns({ arrivals, begins, loads, pace, mostOf: mostOfEach(panels, steps), steps });
  const firstEmptyAt = trucks[0]?.emptyAt ?? 0;
  return {
    trucks,
    panels,
    steps,
    most: mostOnWheels(steps),
    mostByFirstEmpty: mostOnWheels(steps.filter(({ at }) => at <= firstEmptyAt)).panelsOnWheels,
    finishesAt: hanging.hung.at(-1) ?? 0,
    firstDayPanels: hanging.firstDayCount(),
  };
}

/** The most on wheels at the moments when a panel of each truck comes off, by the truck's number. */
function mostOfEach(
  panels: readonly PanelRun[],
  steps: readonly OnWheelsStep[],
): ReadonlyMap<number, number> {
  const most = new Map<number, number>();
  for (const { truck, offAt } of panels)
    most.set(truck, Math.max(most.get(truck) ?? 0, onWheelsAt(steps, offAt)));
  return most;
}

function truckRuns(given: {
  arrivals: readonly Ticks[];
  begins: readonly Ticks[];
  loads: readonly number[];
  pace: Pace;
  mostOf: ReadonlyMap<number, number>;
  steps: readonly OnWheelsStep[];
}): TruckRun[] {
  const { arrivals, begins, loads, pace, mostOf, steps } = given;
  return begins.map((beginsAt, place) => {
    const panels = loads[place] ?? 0;
    const emptyAt = beginsAt + unloadTicks(panels, pace);
    const most = mostOf.get(place + 1) ?? 0;
    return {
      truck: place + 1,
      panels,
      arrivesAt: arrivals[place] ?? 0,
      beginsAt,
      emptyAt,
      onWheelsWhenEmpty: onWheelsAt(steps, emptyAt),
      mostOnWheels: most,
      exceedsLimit: most > pace.limit,
    };
  });
}
