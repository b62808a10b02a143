import { Hanging } from './hanging.js';
import { fitted, type Pace } from './pace.js';
import { mostOnWheels, onWheelsSteps } from './on-wheels.js';
import { panelsOff, placeFree, unloadingBegins, unloadTicks } from './unloading.js';
import type { Ticks } from './working-time.js';

/** When each truck may come, or the least limit on panels on wheels with which the work ends at all. */
export type EarliestTrucks =
  | { readonly ok: true; readonly arrivals: readonly Ticks[] }
  | { readonly ok: false; readonly needed: number; readonly has: number };

/**
 * The earliest whole minute at which each truck may come so that it is unloaded at once, without a stop, and no
 * panel comes off that would bring more on wheels than the limit. Trucks in `stated` come when they come, limit or
 * not; the others follow them. Each truck comes as early as it can, the first first: with one place for unloading
 * no plan whatever brings any truck earlier; with more places a truck held back may let a later one in sooner, which
 * is not tried.
 *
 * It works for limits of tens and loads of thousands alike, since each truck is moved on by what it lacks, never by
 * trying minute after minute: panels are hung no earlier for a truck that comes later, so a panel that finds no
 * trolleys free now must wait at least until the hanging that frees them, as timed now.
 */
export function earliestTrucks(
  loads: readonly number[],
  pace: Pace,
  stated: readonly Ticks[] = [],
): EarliestTrucks {
  const needed = leastOnWheels(loads[stated.length] ?? 0, pace, stated.length > 0);
  if (needed > pace.limit) return { ok: false, needed, has: pace.limit };
  const begins = unloadingBegins(stated, loads, pace);
  const arrivals = [...stated];
  const yard = new Yard(pace);
  yard.take(begins.flatMap((at, truck) => panelsOff(at, loads[truck] ?? 0, pace)));
  for (const panels of loads.slice(stated.length)) {
    const arrival = yard.earliest(placeFree(begins, loads, pace), panels);
    yard.take(panelsOff(arrival, panels, pace));
    begins.push(arrival);
    arrivals.push(arrival);
  }
  return { ok: true, arrivals };
}

/** The most panels on wheels while one load is unloaded from a day's start with nothing else about: no plan does with less. */
function leastOnWheels(panels: number, pace: Pace, experienced: boolean): number {
  const off = panelsOff(0, panels, pace);
  const hanging = new Hanging(experienced ? { ...pace, firstDayHangTicks: pace.hangTicks } : pace);
  for (const at of off) hanging.hang(at);
  return mostOnWheels(onWheelsSteps(off, hanging.hung)).panelsOnWheels;
}

/** The panels that have come so far: those whose turn to be hung is settled, and those a coming truck may still mix with. */
class Yard {
  private readonly hanging: Hanging;
  private settled = 0;
  private waiting: readonly Ticks[] = [];

  constructor(private readonly pace: Pace) {
    this.hanging = new Hanging(pace);
  }

  /** Adds the panels of a truck. */
  take(off: readonly Ticks[]): void {
    this.waiting = [...this.waiting, ...off].sort((left, right) => left - right);
  }

  /** The earliest minute from `from` on at which a load may begin to come off. */
  earliest(from: Ticks, panels: number): Ticks {
    this.settle(from);
    const length = unloadTicks(panels, this.pace);
    let begins = fitted(from, length, this.pace);
    for (;;) {
      const later = this.pace.limit === Infinity ? begins : this.movedOn(begins, panels);
      if (later === begins) return begins;
      begins = fitted(this.wholeMinute(later), length, this.pace);
    }
  }

  /** Settles the panels that come off no later than the first panel of any truck beginning at `from` or after. */
  private settle(from: Ticks): void {
    this.hanging.keep(this.settled);
    const open = this.waiting.findIndex((off) => off > from + this.pace.panelOffTicks);
    const settling = open < 0 ? this.waiting : this.waiting.slice(0, open);
    for (const off of settling) this.hanging.hang(off);
    this.settled += settling.length;
    this.waiting = open < 0 ? [] : this.waiting.slice(open);
  }

  /** `begins` itself where the load fits the limit, or a later time before which it certainly does not. */
  private movedOn(begins: Ticks, panels: number): Ticks {
    const { panelOffTicks, limit } = this.pace;
    const off = [...this.waiting, ...panelsOff(begins, panels, this.pace)].sort(
      (left, right) => left - right,
    );
    this.hanging.keep(this.settled);
    for (const at of off) this.hanging.hang(at);
    let later = begins;
    let othersBefore = 0;
    for (const [place, at] of off.entries()) {
      const free = this.hanging.hung[this.settled + place - limit] ?? 0;
      if (at < begins + panelOffTicks || at >= free) continue;
      while ((this.waiting[othersBefore] ?? Infinity) < free) othersBefore += 1;
      const ownPanel = Math.max(1, place + 1 - othersBefore);
      later = Math.max(later, free - ownPanel * panelOffTicks);
    }
    return later;
  }

  private wholeMinute(at: Ticks): Ticks {
    return Math.ceil(at / this.pace.ticksPerMinute) * this.pace.ticksPerMinute;
  }
}
