import { expect, it } from 'vitest';
import { earliestTrucks } from '../../src/rules/programme/earliest-trucks.js';
import { paceOf } from '../../src/rules/programme/pace.js';
import { simulate } from '../../src/rules/programme/simulate.js';
import { truckloads } from '../../src/rules/programme/truckloads.js';
import { liveThrough } from '../rules/programme-by-ticks.js';
import { tallPanels } from '../rules/programme-example.js';

/** The earliest trucks and the run beside one that lives through every tick: the floor that a plain loop sets. */
it(
  'times the programme of the work beside a loop over every tick',
  () => {
    const rows = [100, 1_000, 10_000].map((panels) => {
      const work = tallPanels({ panels, panelsOnWheels: 60, crews: 3 });
      const pace = paceOf(work);
      const loads = truckloads(panels, pace.ticksPerMinute);
      const found = timed(() => earliestTrucks(loads, pace));
      const arrivals = found.result.ok ? found.result.arrivals : [];
      const run = timed(() => simulate(arrivals, loads, pace));
      const lived = timed(() => liveThrough(work, arrivals, loads));
      expect(run.result.panels.map(({ hungAt }) => hungAt)).toEqual(
        [...lived.result.hung].sort((a, b) => a - b),
      );
      return {
        panels,
        'earliest trucks (ms)': found.ms,
        'the run (ms)': run.ms,
        'every tick (ms)': lived.ms,
        'times slower': Math.round(lived.ms / run.ms),
      };
    });
    console.table(rows);
  },
  5 * 60_000,
);

function timed<T>(work: () => T): { result: T; ms: number } {
  const start = performance.now();
  const result = work();
  return { result, ms: Math.round((performance.now() - start) * 10) / 10 };
}
