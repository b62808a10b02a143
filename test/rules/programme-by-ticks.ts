import type { Work } from '../../src/rules/programme/pace.js';
import { toDay } from '../../src/rules/calendar/day.js';
import type { SeededRandom } from '../support/seeded-random.js';

/** What a run comes to when every tick of every working day is lived through. Times are ticks of working time. */
export interface LivedRun {
  readonly begins: readonly number[];
  readonly off: readonly number[];
  readonly begun: readonly number[];
  readonly hung: readonly number[];
  /** The panels on wheels at each tick at which something changed. */
  readonly onWheels: ReadonlyMap<number, number>;
  readonly most: number;
  readonly firstDayPanels: number;
}

interface Truck {
  readonly arrives: number;
  readonly panels: number;
  place?: { begins: number; panelsLeft: number };
}

interface Crew {
  doneAt?: number;
}

/**
 * The slow way, for tests only: crews, places and trucks as things that change from tick to tick. Nothing of the
 * rule's reasoning (who is free first, what cannot overtake) is used.
 */
export function liveThrough(work: Work, arrivals: readonly number[], loads: readonly number[]): LivedRun {
  const perMinute = work.panelsPerStillage * work.stillagesPerTruck;
  const dayTicks = work.workMinutesPerDay * perMinute;
  const trucks: Truck[] = arrivals.map((arrives, truck) => ({ arrives, panels: loads[truck] ?? 0 }));
  const crews: Crew[] = Array.from({ length: work.crews }, () => ({}));
  const all = trucks.reduce((sum, { panels }) => sum + panels, 0);
  const lived = { off: [] as number[], begun: [] as number[], hung: [] as number[] };
  const onWheels = new Map<number, number>();
  let [queue, wheels, most, firstHangDay, firstDayPanels] = [0, 0, 0, -1, 0];

  const finish = (now: number): void => {
    for (const crew of crews) {
      if (crew.doneAt !== now) continue;
      delete crew.doneAt;
      lived.hung.push(now);
      wheels -= 1;
    }
    for (const truck of trucks) {
      if (!truck.place || truck.place.panelsLeft === 0) continue;
      if ((now - truck.place.begins) % work.unloadMinutes !== 0 || now === truck.place.begins) continue;
      truck.place.panelsLeft -= 1;
      lived.off.push(now);
      queue += 1;
      wheels += 1;
    }
    onWheels.set(now, wheels);
    most = Math.max(most, wheels);
  };
  const start = (now: number, day: number, left: number): void => {
    for (const crew of crews) {
      if (crew.doneAt !== undefined || queue === 0) continue;
      const slow = firstHangDay === -1 || firstHangDay === day;
      const length = (slow ? work.firstDayHangMinutes : work.hangMinutes) * perMinute;
      if (length > left) continue;
      if (slow) [firstHangDay, firstDayPanels] = [day, firstDayPanels + 1];
      crew.doneAt = now + length;
      lived.begun.push(now);
      queue -= 1;
    }
    startTrucks(now, left);
  };
  const startTrucks = (now: number, left: number): void => {
    for (const truck of trucks) {
      if (truck.place) continue;
      const taken = trucks.filter(({ place }) => place && place.panelsLeft > 0).length;
      if (truck.arrives > now || taken >= work.trucksUnloading || truck.panels * work.unloadMinutes > left)
        break;
      truck.place = { begins: now, panelsLeft: truck.panels };
    }
  };
  for (let day = 0; lived.hung.length < all; day += 1) {
    for (let tick = 0; tick <= dayTicks; tick += 1) {
      const now = day * dayTicks + tick;
      if (tick > 0) finish(now);
      if (tick < dayTicks) start(now, day, dayTicks - tick);
    }
  }
  return { begins: trucks.map(({ place }) => place?.begins ?? -1), ...lived, onWheels, most, firstDayPanels };
}

/**
 * The earliest arrivals by trying every minute for each truck, the first truck first. Undefined when a truck finds
 * none within the given days after the one before it.
 */
export function triedArrivals(
  work: Work,
  loads: readonly number[],
  stated: readonly number[] = [],
  days = 12,
): readonly number[] | undefined {
  const perMinute = work.panelsPerStillage * work.stillagesPerTruck;
  const limit = work.panelsOnWheels || Infinity;
  const arrivals = [...stated];
  while (arrivals.length < loads.length) {
    const before = liveThrough(work, arrivals, loads);
    const from = (before.begins.at(-1) ?? 0) / perMinute;
    let found: number | undefined;
    for (let minute = from; found === undefined; minute += 1) {
      if (minute > from + days * work.workMinutesPerDay) return undefined;
      const arrival = minute * perMinute;
      const run = liveThrough(work, [...arrivals, arrival], loads);
      if (run.begins.at(-1) !== arrival) continue;
      const firstOff = arrival + work.unloadMinutes;
      if (run.off.every((at) => at < firstOff || (run.onWheels.get(at) ?? 0) <= limit)) found = arrival;
    }
    arrivals.push(found);
  }
  return arrivals;
}

/** A small work of chance: short days, odd minutes, few panels; every load and cycle fits a day. */
export function anyWork(random: SeededRandom): Work {
  const panelsPerStillage = random.whole(1, 3);
  const stillagesPerTruck = random.whole(1, 2);
  const workMinutesPerDay = random.whole(8, 30);
  const hangMinutes = random.whole(1, Math.min(9, workMinutesPerDay));
  return {
    panels: random.whole(1, 16),
    crews: random.whole(1, 3),
    trucksUnloading: random.whole(1, 2),
    panelsOnWheels: random.whole(1, 9),
    panelsPerStillage,
    stillagesPerTruck,
    unloadMinutes: random.whole(1, 8),
    hangMinutes,
    firstDayHangMinutes: random.whole(hangMinutes, Math.min(hangMinutes + 6, workMinutesPerDay)),
    dayStartMinutes: random.whole(0, 600),
    workMinutesPerDay,
    workDaysPerWeek: random.whole(5, 7),
    firstWorkDay: toDay(`2026-${random.oneOf(['01', '02', '11', '12'])}-${random.whole(10, 28)}`),
  };
}
