import type { Ticks } from './working-time.js';

/** From `at` on, until the next step, so many panels stand on trolleys. */
export interface OnWheelsStep {
  readonly at: Ticks;
  readonly panelsOnWheels: number;
}

/**
 * The panels on wheels as a step function, given when each panel comes off and when each is hung, both in order of
 * time. Trolleys freed at a moment serve a panel that comes off at the same moment. A step is made only where the
 * number changes; before the first it is nought.
 */
export function onWheelsSteps(off: readonly Ticks[], hung: readonly Ticks[]): OnWheelsStep[] {
  const steps: OnWheelsStep[] = [];
  let [come, gone, before] = [0, 0, 0];
  while (gone < hung.length) {
    const at = Math.min(off[come] ?? Infinity, hung[gone] ?? Infinity);
    while (off[come] === at) come += 1;
    while (hung[gone] === at) gone += 1;
    if (come - gone !== before) steps.push({ at, panelsOnWheels: come - gone });
    before = come - gone;
  }
  return steps;
}

/** The first of the steps with the most panels on wheels; nought at the start where there are none. */
export function mostOnWheels(steps: readonly OnWheelsStep[]): OnWheelsStep {
  return steps.reduce((most, step) => (step.panelsOnWheels > most.panelsOnWheels ? step : most), {
    at: 0,
    panelsOnWheels: 0,
  });
}

/** How many panels are on wheels at a moment. */
export function onWheelsAt(steps: readonly OnWheelsStep[], at: Ticks): number {
  let [from, to] = [0, steps.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if ((steps[middle]?.at ?? Infinity) <= at) from = middle + 1;
    else to = middle;
  }
  return steps[from - 1]?.panelsOnWheels ?? 0;
}
