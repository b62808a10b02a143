import { earliestTrucks } from './earliest-trucks.js';
import { paceOf, type Work } from './pace.js';
import { simulate, type Run } from './simulate.js';
import { truckloads } from './truckloads.js';
import type { Ticks } from './working-time.js';

/** A run of the work, or the least limit on panels on wheels with which it ends at all. */
export type Plan =
  | { readonly ok: true; readonly run: Run }
  | { readonly ok: false; readonly needed: number; readonly has: number };

/** Runs a work with the trucks that are stated when they are stated, and the others as early as the limit lets them. */
export function planTrucks(work: Work, stated: readonly Ticks[]): Plan {
  const pace = paceOf(work);
  const loads = truckloads(work.panels, pace.ticksPerMinute);
  const trucks = earliestTrucks(loads, pace, stated.slice(0, loads.length));
  return trucks.ok ? { ok: true, run: simulate(trucks.arrivals, loads, pace) } : trucks;
}
