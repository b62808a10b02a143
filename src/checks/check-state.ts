import type { Condition } from '../rules/gear/gear.js';
import type { CheckState } from './coverage.dto.js';
import type { DayCheck } from './day-checks.js';

/**
 * How an item stands with its check of a day. `checks` are those of the day in the order in which they were recorded,
 * `condition` is given for today only, `releasedBy` is the number of the last examination that closed its defects. One
 * check failed weighs more than any number passed: what counts after it is a check made anew, and after the examination
 * that ended the danger. What is out of service stays failed whatever was checked.
 */
export function checkState(
  checks: readonly Pick<DayCheck, 'inspectionId' | 'outcome'>[],
  { condition = 'inService', releasedBy = 0 }: { condition?: Condition | undefined; releasedBy?: number },
): CheckState {
  if (condition !== 'inService') return 'failed';
  const lastUnfit = checks.findLast(({ outcome }) => outcome === 'unfit');
  const passed = checks.findLast(({ outcome }) => outcome === 'fit');
  if (!lastUnfit) return passed ? 'checked' : 'unchecked';
  return passed && passed.inspectionId > Math.max(lastUnfit.inspectionId, releasedBy) ? 'checked' : 'failed';
}
