import { fitted, type Pace } from './pace.js';
import type { Ticks } from './working-time.js';

/**
 * The earliest that the next truck may begin to unload: not before the truck in front of it, and not before a place
 * is free. Only the last load may be a part load, so trucks are emptied in the order they began.
 */
export function placeFree(begins: readonly Ticks[], loads: readonly number[], pace: Pace): Ticks {
  const next = begins.length;
  const inPlace = next - pace.trucksUnloading;
  return Math.max(begins[next - 1] ?? 0, inPlace < 0 ? 0 : emptyAt(begins[inPlace], loads[inPlace], pace));
}

/** When each truck begins to unload, given when each arrives: as soon as a place is free and the load ends by the end of the day. */
export function unloadingBegins(arrivals: readonly Ticks[], loads: readonly number[], pace: Pace): Ticks[] {
  const begins: Ticks[] = [];
  for (const [truck, arrival] of arrivals.entries()) {
    const ready = Math.max(arrival, placeFree(begins, loads, pace));
    begins.push(fitted(ready, unloadTicks(loads[truck], pace), pace));
  }
  return begins;
}

/** How long a load takes to come off. */
export function unloadTicks(panels: number | undefined, pace: Pace): Ticks {
  return (panels ?? 0) * pace.panelOffTicks;
}

/** When each panel of a load is on its trolleys. */
export function panelsOff(begins: Ticks, panels: number, pace: Pace): Ticks[] {
  return Array.from({ length: panels }, (_, panel) => begins + (panel + 1) * pace.panelOffTicks);
}

function emptyAt(begins: Ticks | undefined, panels: number | undefined, pace: Pace): Ticks {
  return (begins ?? 0) + unloadTicks(panels, pace);
}
