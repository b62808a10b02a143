import { dayNumber, fitted, type Pace } from './pace.js';
import type { Ticks } from './working-time.js';

/**
 * The panels hung one after another, first come first served. All cycles of a day are equally long and none is
 * overtaken, so panels are done in the order they are begun, and the crew that is free first is the one that has
 * hung the panel `crews` places earlier. On the first day that panels are hung every cycle is a slow one.
 */
export class Hanging {
  /** When the cycle of each panel begins, and when it ends, in order. */
  readonly begun: Ticks[] = [];
  readonly hung: Ticks[] = [];

  constructor(private readonly pace: Pace) {}

  /** Hangs the next panel, which came off its truck at `off`, not before the one before it. */
  hang(off: Ticks): void {
    const crewFree = this.hung[this.hung.length - this.pace.crews] ?? 0;
    const ready = Math.max(off, crewFree);
    const begins = this.beginOf(ready);
    this.begun.push(begins);
    this.hung.push(begins + this.lengthOf(begins));
  }

  /** Forgets all but the first so many panels. */
  keep(count: number): void {
    this.begun.length = count;
    this.hung.length = count;
  }

  /** How many panels were hung at the slow pace of the first day. */
  firstDayCount(): number {
    const later = this.begun.findIndex((at) => !this.isFirstDay(at));
    return later < 0 ? this.begun.length : later;
  }

  private beginOf(ready: Ticks): Ticks {
    return fitted(ready, this.lengthOf(ready), this.pace);
  }

  private lengthOf(at: Ticks): Ticks {
    return this.isFirstDay(at) ? this.pace.firstDayHangTicks : this.pace.hangTicks;
  }

  /** Before the first panel is begun, any day may become the first. */
  private isFirstDay(at: Ticks): boolean {
    const [first] = this.begun;
    return first === undefined || dayNumber(at, this.pace) <= dayNumber(first, this.pace);
  }
}
