import { CLOCK_IN_DOUBT } from '../../sentences/clock-in-doubt.js';
import type { CheckConflict, CheckReceipt } from './contract.js';
import { whenOf } from './time.js';

/** What happened to the item while there was no signal, and whether the check counts; it is kept all the same. */
export function conflictWords({ conflict, clockDoubtful }: CheckReceipt): string | undefined {
  const words = [
    ...(conflict ? [`${reason(conflict)}; your check is kept.`] : []),
    ...(clockDoubtful ? [CLOCK_IN_DOUBT] : []),
  ];
  return words.length === 0 ? undefined : words.join(' ');
}

function reason({ code, at, by }: CheckConflict): string {
  const taken = `${at ? ` at ${whenOf(at)}` : ''} by ${by ?? 'another crew'}`;
  switch (code) {
    case 'already_quarantined':
      return `Already quarantined${taken}. Do not use it`;
    case 'under_repair':
      return `Already taken for repair${taken}. Do not use it`;
    case 'job_cancelled':
      return 'The job was cancelled meanwhile';
    case 'left_job':
      return 'The item is no longer on this job';
    case 'not_on_job':
      return 'The item is not on this job. Do not use it here before the storeman has looked';
  }
}
