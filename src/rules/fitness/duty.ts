import type { Gear } from '../gear/gear.js';
import type { KindDefinition } from '../gear/kind.js';
import type { GearLine } from '../lines/need.js';
import type { Refusal } from './refusal.js';

/**
 * Whether the item is of the kind asked for and may do this duty. A lashing capacity never serves lifting: a line
 * that asks a lifting duty of one, and an item that is stamped with nothing else, are refused whatever the kind says.
 */
export function dutyRefusals(gear: Gear, line: GearLine, kind: KindDefinition): Refusal[] {
  const refusals: Refusal[] = [];
  if (gear.kind !== line.kind || kind.kind !== gear.kind) {
    refusals.push({ code: 'wrong_kind', subject: gear.kind, source: 'common-practice' });
  }
  if (!kind.duties.includes(line.duty) || liftsByLashing(gear, line)) {
    refusals.push({ code: 'wrong_duty', subject: line.duty, source: 'common-practice' });
  }
  return refusals;
}

function liftsByLashing(gear: Gear, line: GearLine): boolean {
  if (line.duty !== 'lifting') return false;
  const stampedForLashing = gear.markings.some(({ measure }) => measure === 'lashingCapacity');
  const onlyForLashing = gear.markings.every(({ measure }) => measure === 'lashingCapacity');
  return line.rating?.measure === 'lashingCapacity' || (stampedForLashing && onlyForLashing);
}
