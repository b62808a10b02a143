import { describe, expect, it } from 'vitest';
import { earliestTrucks } from '../../src/rules/programme/earliest-trucks.js';
import { paceOf, type Work } from '../../src/rules/programme/pace.js';
import { simulate } from '../../src/rules/programme/simulate.js';
import { truckloads } from '../../src/rules/programme/truckloads.js';
import { seededRandom } from '../support/seeded-random.js';
import { anyWork, liveThrough, triedArrivals } from './programme-by-ticks.js';
import { tallPanels } from './programme-example.js';

function loadsOf(work: Work): readonly number[] {
  return truckloads(work.panels, work.panelsPerStillage * work.stillagesPerTruck);
}

/** The works of chance whose fullest load can be unloaded in a day. */
function worksOfChance(
  count: number,
): { seed: number; work: Work; random: ReturnType<typeof seededRandom> }[] {
  return Array.from({ length: count }, (_, seed) => {
    const random = seededRandom(seed + 1);
    return { seed: seed + 1, random, work: anyWork(random) };
  }).filter(({ work }) => (loadsOf(work)[0] ?? 0) * work.unloadMinutes <= paceOf(work).dayTicks);
}

function finish(work: Work, arrivals: readonly number[]): number {
  return simulate(arrivals, loadsOf(work), paceOf(work)).finishesAt;
}

describe('the earliest trucks, worked by hand', () => {
  // A load of 18 in 30 minutes; a tick is 1/18 minute, a panel every 30 ticks. One crew, 25 minutes on the first day.
  it('lets the second truck in when enough pairs are free', () => {
    // 20 pairs. Panel 1 is off at 30 ticks and hung at 30 + 25 × 18 = 480; panel k is hung at 30 + 450 k. The first
    // truck leaves 17 on wheels at 540 ticks. Panel 36 needs 16 hung: hung 16 is at 7230 ticks; it is off 36 - 18 = 18
    // panels after the truck begins, 540 ticks. Panel 21 needs 1 hung, and so on: panel 20 + j, the (2 + j)th of the
    // load, needs j hung: begin >= 30 + 450 j - 30 (2 + j) for j to 16, most at 16: 30 + 7200 - 540 = 6690 ticks,
    // 371 2/3 minutes: the whole minute 372, 6696 ticks.
    expect(earliestTrucks([18, 18], paceOf(tallPanels({ panels: 36 })))).toEqual({
      ok: true,
      arrivals: [0, 6696],
    });
  });

  it('needs pairs for a load less what is hung while it comes off', () => {
    // Hung at 480 ticks, when panel 16 is off: 18 - 1 = 17 on wheels when the truck is empty at 540.
    expect(earliestTrucks([18], paceOf(tallPanels({ panelsOnWheels: 16 })))).toEqual({
      ok: false,
      needed: 17,
      has: 16,
    });
    expect(earliestTrucks([18], paceOf(tallPanels({ panelsOnWheels: 17 })))).toEqual({
      ok: true,
      arrivals: [0],
    });
  });

  it('come one after another as places are free where nothing is limited', () => {
    for (const panelsOnWheels of [0, 40, 100]) {
      expect(earliestTrucks([18, 18, 4], paceOf(tallPanels({ panelsOnWheels })))).toEqual({
        ok: true,
        arrivals: [0, 540, 1080],
      });
    }
    const twoPlaces = paceOf(tallPanels({ panelsOnWheels: 0, trucksUnloading: 2 }));
    expect(earliestTrucks([18, 18, 4], twoPlaces)).toEqual({ ok: true, arrivals: [0, 0, 540] });
  });
});

describe('the earliest trucks', () => {
  it('are those found by trying every minute', () => {
    let ended = 0;
    for (const { seed, work } of worksOfChance(300)) {
      const loads = loadsOf(work);
      const found = earliestTrucks(loads, paceOf(work));
      const tried = triedArrivals(work, loads);
      if (tried) ended += 1;
      expect(found.ok ? found.arrivals : undefined, `seed ${seed}`).toEqual(tried);
    }
    expect(ended).toBeGreaterThan(100);
  });

  it('follow the trucks that are stated, limit or not', () => {
    let ended = 0;
    for (const { seed, work, random } of worksOfChance(500)) {
      const loads = loadsOf(work);
      const { ticksPerMinute } = paceOf(work);
      const stated = loads
        .slice(0, random.whole(1, Math.max(1, loads.length - 1)))
        .map(() => random.whole(0, 40) * ticksPerMinute)
        .sort((a, b) => a - b);
      const found = earliestTrucks(loads, paceOf(work), stated);
      const tried = triedArrivals(work, loads, stated);
      if (tried) ended += 1;
      expect(found.ok ? found.arrivals : undefined, `seed ${seed}`).toEqual(tried);
    }
    expect(ended).toBeGreaterThan(100);
  });

  it('never end with one pair fewer than needed, and end with that many', () => {
    let refused = 0;
    for (const { work } of worksOfChance(400)) {
      const loads = loadsOf(work);
      const few = earliestTrucks(loads, paceOf({ ...work, panelsOnWheels: 1 }));
      if (few.ok) continue;
      refused += 1;
      const enough = { ...work, panelsOnWheels: few.needed };
      expect(earliestTrucks(loads, paceOf(enough)).ok).toBe(true);
      const lacking = { ...work, panelsOnWheels: few.needed - 1 };
      expect(earliestTrucks(loads, paceOf(lacking))).toEqual({
        ok: false,
        needed: few.needed,
        has: few.needed - 1,
      });
      expect(triedArrivals(lacking, loads, [], 3)).toBeUndefined();
    }
    expect(refused).toBeGreaterThan(100);
  });

  it('are each the earliest of all plans whatever with one place for unloading', () => {
    let compared = 0;
    for (const { seed, work } of worksOfChance(900)) {
      const loads = loadsOf(work);
      const one = { ...work, trucksUnloading: 1 };
      const found = earliestTrucks(loads, paceOf(one));
      if (!found.ok || loads.length !== 2 || work.workMinutesPerDay > 16) continue;
      compared += 1;
      const { ticksPerMinute } = paceOf(one);
      const minutes = Array.from(
        { length: Math.ceil((found.arrivals[1] ?? 0) / ticksPerMinute) },
        (_, at) => at,
      );
      const pairs = minutes.flatMap((next) =>
        minutes.filter((first) => first <= next && first <= 16).map((first) => [first, next]),
      );
      const sooner = pairs.filter((pair) => {
        const arrivals = pair.map((minute) => minute * ticksPerMinute);
        const run = liveThrough(one, arrivals, loads);
        const atOnce = run.begins.every((begins, truck) => begins === arrivals[truck]);
        return atOnce && run.most <= (one.panelsOnWheels ?? 0);
      });
      expect(sooner, `seed ${seed}`).toEqual([]);
    }
    expect(compared).toBeGreaterThan(30);
  });

  it('with one place, come no later and finish no later for one more crew or one more pair', () => {
    for (const { seed, work } of worksOfChance(800)) {
      const one = { ...work, trucksUnloading: 1, panels: work.panels + 10 };
      const loads = loadsOf(one);
      const found = earliestTrucks(loads, paceOf(one));
      if (!found.ok) continue;
      for (const more of [
        { ...one, crews: one.crews + 1 },
        { ...one, panelsOnWheels: (one.panelsOnWheels ?? 0) + 1 },
      ]) {
        const sooner = earliestTrucks(loads, paceOf(more));
        const arrivals = sooner.ok ? sooner.arrivals : [];
        expect(arrivals.length, `seed ${seed}`).toBe(loads.length);
        arrivals.forEach((at, truck) => expect(at).toBeLessThanOrEqual(found.arrivals[truck] ?? -1));
        expect(finish(more, arrivals), `seed ${seed}`).toBeLessThanOrEqual(finish(one, found.arrivals));
      }
    }
  });

  it('are found for ten thousand panels', () => {
    for (const work of [
      tallPanels({ panels: 10_000, panelsOnWheels: 17 }),
      tallPanels({ panels: 10_000, panelsOnWheels: 60, crews: 5, trucksUnloading: 3 }),
      tallPanels({ panels: 10_000, panelsOnWheels: 3, panelsPerStillage: 1, stillagesPerTruck: 1 }),
    ]) {
      const found = earliestTrucks(loadsOf(work), paceOf(work));
      expect(found.ok && simulate(found.arrivals, loadsOf(work), paceOf(work)).panels.length).toBe(10_000);
    }
  });
});
