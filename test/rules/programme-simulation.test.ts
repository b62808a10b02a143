import { describe, expect, it } from 'vitest';
import { onWheelsAt } from '../../src/rules/programme/on-wheels.js';
import { paceOf } from '../../src/rules/programme/pace.js';
import { simulate } from '../../src/rules/programme/simulate.js';
import { truckloads } from '../../src/rules/programme/truckloads.js';
import { seededRandom } from '../support/seeded-random.js';
import { anyWork, liveThrough } from './programme-by-ticks.js';
import { tallPanels } from './programme-example.js';

/** Durations, loads and crews are common practice, no source; the arithmetic is by hand. */
describe('truckloads', () => {
  it.each([
    { panels: 1, perLoad: 18, loads: [1] },
    { panels: 17, perLoad: 18, loads: [17] },
    { panels: 18, perLoad: 18, loads: [18] },
    { panels: 19, perLoad: 18, loads: [18, 1] },
    { panels: 40, perLoad: 18, loads: [18, 18, 4] },
    { panels: 3, perLoad: 1, loads: [1, 1, 1] },
  ])('$panels panels, $perLoad a load', ({ panels, perLoad, loads }) => {
    expect(truckloads(panels, perLoad)).toEqual(loads);
  });
});

describe('a run worked by hand', () => {
  // A load of 2 panels in 10 minutes: one tick is half a minute, panels come off after 10 and 20 ticks. One crew, 15
  // minutes a panel on the first day (30 ticks), 10 after it (20 ticks). A day of 40 minutes is 80 ticks.
  const work = tallPanels({
    panels: 3,
    panelsPerStillage: 2,
    stillagesPerTruck: 1,
    unloadMinutes: 10,
    hangMinutes: 10,
    firstDayHangMinutes: 15,
    workMinutesPerDay: 40,
    panelsOnWheels: 1,
  });
  const run = simulate([0, 30], [2, 1], paceOf(work));

  it('times every panel', () => {
    // Panel 1: off 10, hung 10-40. Panel 2: off 20, hung 40-70. Panel 3 (truck 2 begins at 30): off 40; the crew is
    // free at 70, but a slow cycle ends at 100 > 80, so it waits for the next day: 80-100 at the usual pace.
    expect(run.panels).toEqual([
      { truck: 1, offAt: 10, begunAt: 10, hungAt: 40 },
      { truck: 1, offAt: 20, begunAt: 40, hungAt: 70 },
      { truck: 2, offAt: 40, begunAt: 80, hungAt: 100 },
    ]);
    expect([run.finishesAt, run.firstDayPanels]).toEqual([100, 2]);
  });

  it('counts what is on wheels, a pair freed at the moment serving the next panel', () => {
    expect(run.steps).toEqual([
      { at: 10, panelsOnWheels: 1 },
      { at: 20, panelsOnWheels: 2 },
      { at: 70, panelsOnWheels: 1 },
      { at: 100, panelsOnWheels: 0 },
    ]);
    expect([run.most, run.mostByFirstEmpty]).toEqual([{ at: 20, panelsOnWheels: 2 }, 2]);
  });

  it('names the trucks that pass the limit', () => {
    const usual = { exceedsLimit: true, mostOnWheels: 2, onWheelsWhenEmpty: 2 };
    expect(run.trucks).toEqual([
      { ...usual, truck: 1, panels: 2, arrivesAt: 0, beginsAt: 0, emptyAt: 20 },
      { ...usual, truck: 2, panels: 1, arrivesAt: 30, beginsAt: 30, emptyAt: 40 },
    ]);
    const atLimit = simulate([0, 30], [2, 1], paceOf({ ...work, panelsOnWheels: 2 }));
    expect(atLimit.trucks.map(({ exceedsLimit }) => exceedsLimit)).toEqual([false, false]);
    const unlimited = simulate([0, 30], [2, 1], paceOf({ ...work, panelsOnWheels: 0 }));
    expect(unlimited.trucks.map(({ exceedsLimit }) => exceedsLimit)).toEqual([false, false]);
  });

  it('keeps a truck waiting for a place, or overnight for a whole unloading', () => {
    expect(simulate([0, 4], [2, 1], paceOf(work)).trucks[1]?.beginsAt).toBe(20);
    expect(simulate([0, 4], [2, 1], paceOf({ ...work, trucksUnloading: 2 })).trucks[1]?.beginsAt).toBe(4);
    expect(simulate([60], [2], paceOf(work)).trucks[0]?.beginsAt).toBe(60);
    expect(simulate([62], [2], paceOf(work)).trucks[0]?.beginsAt).toBe(80);
  });

  it('is slow on the first day that a panel is hung, whichever that is', () => {
    // Off at 70 and 80: no slow cycle ends by 80, so the first one is slow on the next day.
    expect(simulate([60], [2], paceOf(work)).panels.map(({ hungAt }) => hungAt)).toEqual([110, 140]);
  });
});

describe('a run', () => {
  it('is the same as when every tick is lived through', () => {
    for (let seed = 1; seed <= 600; seed += 1) {
      const random = seededRandom(seed);
      const work = anyWork(random);
      const pace = paceOf(work);
      const loads = truckloads(work.panels, pace.ticksPerMinute);
      if ((loads[0] ?? 0) * pace.panelOffTicks > pace.dayTicks) continue;
      const minutes = loads.map(() => random.whole(0, 3 * work.workMinutesPerDay)).sort((a, b) => a - b);
      const arrivals = minutes.map((minute) => minute * pace.ticksPerMinute);
      const [run, lived] = [simulate(arrivals, loads, pace), liveThrough(work, arrivals, loads)];
      expect(
        {
          begins: run.trucks.map(({ beginsAt }) => beginsAt),
          off: run.panels.map(({ offAt }) => offAt),
          begun: run.panels.map(({ begunAt }) => begunAt),
          hung: run.panels.map(({ hungAt }) => hungAt),
          most: run.most.panelsOnWheels,
          firstDayPanels: run.firstDayPanels,
        },
        `seed ${seed}`,
      ).toEqual({
        begins: lived.begins,
        off: lived.off,
        begun: lived.begun,
        hung: lived.hung,
        most: lived.most,
        firstDayPanels: lived.firstDayPanels,
      });
      const told = [...lived.onWheels.keys()].map((at) => [at, onWheelsAt(run.steps, at)]);
      expect(told).toEqual([...lived.onWheels]);
      expect(run.finishesAt).toBe(lived.hung.at(-1));
    }
  });

  it('tells of each truck what was on wheels while it was unloaded', () => {
    for (let seed = 1; seed <= 200; seed += 1) {
      const random = seededRandom(seed);
      const work = { ...anyWork(random), workMinutesPerDay: 60, unloadMinutes: random.whole(1, 5) };
      const pace = paceOf(work);
      const loads = truckloads(work.panels, pace.ticksPerMinute);
      const minutes = loads.map(() => random.whole(0, 60)).sort((a, b) => a - b);
      const arrivals = minutes.map((minute) => minute * pace.ticksPerMinute);
      const lived = liveThrough(work, arrivals, loads);
      const run = simulate(arrivals, loads, pace);
      for (const truck of run.trucks) {
        const own = Array.from(
          { length: truck.panels },
          (_, k) => truck.beginsAt + (k + 1) * work.unloadMinutes,
        );
        const counts = own.map((at) => lived.onWheels.get(at) ?? -1);
        expect([truck.emptyAt, truck.onWheelsWhenEmpty]).toEqual([own.at(-1), counts.at(-1)]);
        expect([truck.mostOnWheels, truck.exceedsLimit]).toEqual([
          Math.max(...counts),
          Math.max(...counts) > (work.panelsOnWheels ?? 0),
        ]);
      }
      const firstEmpty = run.trucks[0]?.emptyAt ?? 0;
      const byThen = [...lived.onWheels].filter(([at]) => at <= firstEmpty).map(([, wheels]) => wheels);
      expect(run.mostByFirstEmpty).toBe(Math.max(...byThen));
    }
  });
});
