import { badInput } from '../http/input.js';
import type { Change } from '../ledger/ledger.service.js';
import { Problem } from '../problem.js';
import type { LockedItem } from '../register/item-condition.js';
import { ExaminationReportEntity } from './examination-report.entity.js';
import { InspectionEntity } from './inspection.entity.js';
import type { NewInspectionDto } from './inspections.dto.js';

/**
 * A correction stays with the item and the type: what a competent person found is not undone by another kind of record.
 * @throws Problem `bad_input`.
 */
export async function refuseWrongCorrection(
  change: Change,
  item: LockedItem,
  { supersedesId, type }: Pick<NewInspectionDto, 'supersedesId' | 'type'>,
): Promise<void> {
  if (supersedesId === undefined) return;
  const earlier = await change.manager.findOneBy(InspectionEntity, { id: supersedesId });
  const field = 'supersedesId';
  if (earlier?.itemId !== item.id) throw badInput([{ field, message: 'is not a record of this item' }]);
  if (earlier.type !== type)
    throw badInput([{ field, message: 'is a record of another type of inspection' }]);
}

/** A report is corrected by a report with all its particulars, not by a bare record. @throws Problem `not_allowed_now`. */
export async function refuseCorrectionOfReport(
  change: Change,
  { supersedesId }: Pick<NewInspectionDto, 'supersedesId'>,
): Promise<void> {
  if (supersedesId === undefined) return;
  const report = await change.manager.findOneBy(ExaminationReportEntity, { inspectionId: supersedesId });
  if (!report) return;
  throw new Problem(
    'not_allowed_now',
    `Record ${supersedesId} is report ${report.number}: correct it by a new report of the examination.`,
  );
}

/** Only who signed a report can say that it was written wrongly; anyone else examines anew. @throws Problem `not_allowed_now`. */
export async function refuseCorrectionByOthers(
  change: Change,
  { supersedesId }: Pick<NewInspectionDto, 'supersedesId'>,
): Promise<void> {
  if (supersedesId === undefined) return;
  const earlier = await change.manager.findOneByOrFail(InspectionEntity, { id: supersedesId });
  if (earlier.recordedBy === change.actor.id) return;
  throw new Problem(
    'not_allowed_now',
    `Record ${supersedesId} is by ${earlier.doneBy}: examine the item yourself and write a report of your own.`,
  );
}
