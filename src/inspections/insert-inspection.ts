import type { Change } from '../ledger/ledger.service.js';
import { Problem } from '../problem.js';
import type { LockedItem } from '../register/item-condition.js';
import { isUniqueViolation } from '../storage/engine-errors.js';
import { InspectionEntity } from './inspection.entity.js';
import type { NewInspectionDto } from './inspections.dto.js';

/**
 * Adds an inspection of a locked item inside a change, with its line of history. Whether it may be recorded is the
 * caller's to decide.
 * @throws Problem `not_allowed_now` of a correction of what was corrected before.
 */
export async function insertInspection(
  change: Change,
  item: LockedItem,
  input: Omit<NewInspectionDto, 'release'>,
): Promise<InspectionEntity> {
  const {
    type,
    doneOn,
    outcome,
    nextDueOn = null,
    reportNumber = null,
    remarks = '',
    supersedesId = null,
  } = input;
  const doneBy = input.doneBy ?? change.actor.name;
  const record = { type, doneOn, outcome, nextDueOn, doneBy, reportNumber, remarks, supersedesId };
  const recorded = { itemId: item.id, recordedBy: change.actor.id, recordedAt: change.at };
  const row = change.manager.create(InspectionEntity, { ...record, ...recorded });
  await change.manager.insert(InspectionEntity, row).catch((error: unknown) => {
    if (!isUniqueViolation(error, { table: 'inspection', columns: ['supersedes_id'] })) throw error;
    throw new Problem(
      'not_allowed_now',
      `Record ${supersedesId} was corrected before: correct the correction.`,
    );
  });
  const detail = { tag: item.tag, inspectionId: row.id, ...record };
  change.note({ action: 'inspection.recorded', subjectKind: 'item', subjectId: item.id, detail });
  return row;
}
