import type { Day } from '../calendar/day.js';
import type { Condition, Gear } from '../gear/gear.js';
import type { Refusal, RefusalCode } from './refusal.js';

const CODE_OF: Readonly<Record<Exclude<Condition, 'inService'>, RefusalCode>> = {
  scrapped: 'scrapped',
  quarantined: 'quarantined',
  underRepair: 'under_repair',
};

/**
 * Whether people have taken the item out of use, it cannot be found, or the day an examiner named for an open
 * defect comes before the last day it is needed. The named day itself is still a day of use.
 */
export function conditionRefusals(gear: Gear, neededThrough: Day): Refusal[] {
  const refusals: Refusal[] = [];
  if (gear.condition !== 'inService') {
    refusals.push({ code: CODE_OF[gear.condition], source: 'common-practice' });
  }
  if (gear.missing) refusals.push({ code: 'missing', source: 'common-practice' });
  if (gear.defectDeadline !== undefined && gear.defectDeadline < neededThrough) {
    refusals.push({ code: 'defect_deadline', on: gear.defectDeadline, source: 'common-practice' });
  }
  return refusals;
}

/** Whether the item can be told from others and its label read. */
export function identityRefusals(gear: Gear): Refusal[] {
  const refusals: Refusal[] = [];
  if (!gear.labelLegible) refusals.push({ code: 'label_illegible', source: 'common-practice' });
  if (!gear.serialKnown) refusals.push({ code: 'serial_unknown', source: 'common-practice' });
  return refusals;
}
