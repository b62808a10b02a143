import { badInput } from '../http/input.js';
import type { Actor } from '../people/actor.js';
import type { Role } from '../people/role.js';
import { Problem, type FieldError } from '../problem.js';
import type { LockedItem } from '../register/item-condition.js';
import type { Day } from '../rules/calendar/day.js';
import type { InspectionType } from '../rules/gear/gear.js';
import type { NewInspectionDto } from './inspections.dto.js';

/** Who may record each type of inspection. A check before use is recorded with its answers, elsewhere. */
const RECORDED_BY: Readonly<Record<Exclude<InspectionType, 'preUseCheck'>, readonly Role[]>> = {
  interimInspection: ['competentPerson', 'storeman', 'manager'],
  thoroughExamination: ['competentPerson'],
  proofLoadTest: ['competentPerson'],
};

/**
 * @throws Problem `not_your_role` unless the actor may record inspections of the type; `bad_input` of a check before
 * use, which says nothing without its answers.
 */
export function refuseOtherRoles(actor: Actor, type: InspectionType): void {
  if (type === 'preUseCheck') throw badInput([{ field: 'type', message: CHECK_ELSEWHERE }]);
  const roles = RECORDED_BY[type];
  if (roles.some((role) => actor.roles.includes(role))) return;
  throw new Problem('not_your_role', `Recording this needs the role ${roles.join(' or ')}.`);
}

const CHECK_ELSEWHERE =
  'a check before use answers its checklist: use POST /api/items/:id/checks, or "Check before use" on the page of the item';

/** What is wrong with a record by itself, whatever state the item is in. */
export function checkInspection(
  input: NewInspectionDto,
  { item, actor, today }: { item: LockedItem; actor: Actor; today: Day },
): FieldError[] {
  const errors: FieldError[] = [];
  const { doneOn, nextDueOn, doneBy } = input;
  if (doneOn > today)
    errors.push({ field: 'doneOn', message: `is in the future: today is ${today} at the store` });
  if (item.manufacturedOn !== null && doneOn < item.manufacturedOn) {
    errors.push({ field: 'doneOn', message: `is before the item was made, on ${item.manufacturedOn}` });
  }
  if (nextDueOn !== undefined && nextDueOn <= doneOn) {
    errors.push({ field: 'nextDueOn', message: 'comes after the day of the inspection' });
  }
  if (doneBy === undefined && !actor.roles.includes('competentPerson'))
    errors.push({ field: 'doneBy', message: 'write who did it, as on the report' });
  if (input.release) errors.push(...checkRelease(input));
  return errors;
}

/** What keeps a record from releasing an item: only a thorough examination passed does, and never as a correction. */
export function checkRelease({
  type,
  outcome,
  supersedesId,
}: Pick<NewInspectionDto, 'type' | 'outcome' | 'supersedesId'>): FieldError[] {
  const field = 'release';
  if (type !== 'thoroughExamination')
    return [{ field, message: 'only a thorough examination releases an item' }];
  if (outcome !== 'fit') return [{ field, message: 'an item found unfit stays where it is' }];
  if (supersedesId !== undefined)
    return [{ field, message: 'a correction releases nothing: record an examination' }];
  return [];
}
