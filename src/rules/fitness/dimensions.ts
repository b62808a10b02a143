import type { Gear } from '../gear/gear.js';
import type { DimensionNeed, GearLine } from '../lines/need.js';
import { Exact } from '../quantities/exact.js';
import type { Refusal, RefusalCode } from './refusal.js';

/** Whether each measured attribute that the line asks for is known and meets its need. Equality passes. */
export function dimensionRefusals(gear: Gear, line: GearLine): Refusal[] {
  return line.dimensions.flatMap((need) => dimensionRefusal(gear, need));
}

function dimensionRefusal(gear: Gear, need: DimensionNeed): Refusal[] {
  const { dimension: subject, source } = need;
  const unit = unitOf(subject);
  const needed = Exact.of(need.value);
  const has = readSize(gear, subject);
  if (!has) return [{ code: 'unknown_size', subject, needed: needed.toString(), unit, source }];
  if (MEETS[need.rule](has.compare(needed))) return [];
  return [{ code: codeOf(need), subject, needed: needed.toString(), has: has.toString(), unit, source }];
}

/** What each rule asks of the size on record against the one needed: negative for less, nought for equal. */
const MEETS: Readonly<Record<DimensionNeed['rule'], (comparison: number) => boolean>> = {
  atLeast: (comparison) => comparison >= 0,
  atMost: (comparison) => comparison <= 0,
  equals: (comparison) => comparison === 0,
};

/** The size on record, when it is a number above zero. */
function readSize(gear: Gear, dimension: string): Exact | undefined {
  const text = Object.hasOwn(gear.dimensions, dimension) ? gear.dimensions[dimension] : undefined;
  if (text === undefined || !/^\d+(\.\d+)?$/.test(text)) return undefined;
  const size = Exact.of(text);
  return size.isZero() ? undefined : size;
}

/**
 * A size that must match is that of the machine it is hung on; one that may be too large is an opening on a panel; of the
 * others a reach is given in metres and an opening in millimetres.
 */
function codeOf({ dimension, rule }: DimensionNeed): RefusalCode {
  if (rule === 'equals') return 'does_not_fit_machine';
  return rule === 'atMost' || unitOf(dimension) === 'mm' ? 'does_not_fit_panel' : 'too_short';
}

/** The unit that the dimension's name ends in. */
function unitOf(dimension: string): 'm' | 'mm' {
  return dimension.endsWith('Mm') ? 'mm' : 'm';
}
