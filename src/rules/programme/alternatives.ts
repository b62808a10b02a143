import { paceOf, type Work } from './pace.js';
import { planTrucks } from './plan-trucks.js';
import { simulate, type Run } from './simulate.js';
import { truckloads } from './truckloads.js';
import type { Ticks } from './working-time.js';

/** The change that an alternative makes, or none. */
export type Change = 'asPlanned' | 'oneMoreCrew' | 'fiveMoreOnWheels';

/** How the work would run with a change. */
export interface Alternative {
  readonly change: Change;
  readonly crews: number;
  /** Nought: no limit. */
  readonly panelsOnWheels: number;
  readonly run: Run;
}

/**
 * The run as planned, with one more crew, and, where panels on wheels are limited, with five more of them.
 *
 * With more than one place for unloading, trucks that each come as early as they can may finish later in spite of
 * more crews or trolleys. The trucks of the run as planned still fit then, so they are kept: more hands never make
 * the work longer.
 */
export function alternatives(work: Work, stated: readonly Ticks[], planned: Run): readonly Alternative[] {
  const panelsOnWheels = work.panelsOnWheels ?? 0;
  const changed = (change: Change, more: Partial<Work>): Alternative => {
    const other = { ...work, panelsOnWheels, ...more };
    return {
      change,
      crews: other.crews,
      panelsOnWheels: other.panelsOnWheels,
      run: better(other, stated, planned),
    };
  };
  return [
    { change: 'asPlanned', crews: work.crews, panelsOnWheels, run: planned },
    changed('oneMoreCrew', { crews: work.crews + 1 }),
    ...(panelsOnWheels > 0 ? [changed('fiveMoreOnWheels', { panelsOnWheels: panelsOnWheels + 5 })] : []),
  ];
}

function better(work: Work, stated: readonly Ticks[], planned: Run): Run {
  const plan = planTrucks(work, stated);
  if (plan.ok && plan.run.finishesAt <= planned.finishesAt) return plan.run;
  const arrivals = planned.trucks.map(({ arrivesAt }) => arrivesAt);
  const pace = paceOf(work);
  return simulate(arrivals, truckloads(work.panels, pace.ticksPerMinute), pace);
}
