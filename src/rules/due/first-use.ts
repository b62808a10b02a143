import { addMonths, type Day } from '../calendar/day.js';
import type { Gear } from '../gear/gear.js';
import type { Trigger } from './scheme.js';

/** Gear bought new that may be used on the maker's declaration before its first examination. */
export interface NewWithDeclaration {
  readonly declarationOn: Day;
  /** The last day on which it may enter service on that declaration; absent when it is in service already. */
  readonly firstUseBy?: Day;
}

/**
 * Whether an item never examined may be used on its maker's declaration: only where the scheme makes that
 * exception, and only when the item entered service on or after the day of the declaration and no more than
 * `declarationMonths` after it. An item not yet used enters service today at the earliest. GB: LOLER 1998 reg 9(1).
 */
export function newWithDeclaration(
  gear: Gear,
  triggers: readonly Trigger[],
  today: Day,
): NewWithDeclaration | undefined {
  const months = triggers.flatMap((trigger) =>
    trigger.when === 'firstUse' && trigger.declarationMonths !== undefined ? [trigger.declarationMonths] : [],
  )[0];
  const { declarationOn, firstUsedOn } = gear;
  if (months === undefined || declarationOn === undefined) return undefined;
  const firstUseBy = addMonths(declarationOn, months);
  const entersServiceOn = firstUsedOn ?? today;
  if (declarationOn > today || declarationOn > entersServiceOn || entersServiceOn > firstUseBy)
    return undefined;
  return firstUsedOn === undefined ? { declarationOn, firstUseBy } : { declarationOn };
}
