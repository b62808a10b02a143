import type { GearLine } from '../lines/need.js';
import type { Refusal } from './refusal.js';

/** A line whose need is not settled takes nothing: no rating can be shown to be enough. */
export function needRefusals({ unsettled = [] }: GearLine): Refusal[] {
  return unsettled.map(({ subject }) => ({
    code: 'need_unsettled',
    ...(subject !== undefined && { subject }),
    source: 'common-practice',
  }));
}
