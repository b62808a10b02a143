import { badInput } from '../http/input.js';
import { detailsOf } from '../ledger/details-of.js';
import type { Change } from '../ledger/ledger.service.js';
import { Problem } from '../problem.js';
import type { LockedItem } from '../register/item-condition.js';
import { DefectEntity } from './defect.entity.js';
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

/**
 * What an examination released was released by what came before it. So a correction of one that did names no earlier
 * day: the quarantine or a defect may lie between the two, and then nobody has looked at it since.
 * @throws Problem `not_allowed_now`.
 */
export async function refuseEarlierRelease(
  change: Change,
  item: LockedItem,
  { supersedesId, doneOn }: Pick<NewInspectionDto, 'supersedesId' | 'doneOn'>,
): Promise<void> {
  if (supersedesId === undefined) return;
  const first = await firstOf(change, supersedesId);
  if (doneOn >= first.doneOn || !(await released(change, item, first))) return;
  throw new Problem(
    'not_allowed_now',
    `Record ${first.id} released ${item.tag} on ${first.doneOn}. If it was done earlier it released nothing: take the item out of service and have it examined anew.`,
  );
}

/** The record that a correction goes back to: corrections release nothing, so only that one can have. */
async function firstOf(change: Change, id: number): Promise<InspectionEntity> {
  const record = await change.manager.findOneByOrFail(InspectionEntity, { id });
  return record.supersedesId === null ? record : firstOf(change, record.supersedesId);
}

async function released(change: Change, item: LockedItem, { id }: InspectionEntity): Promise<boolean> {
  if (await change.manager.existsBy(DefectEntity, { closedByInspectionId: id })) return true;
  const about = { subjectKind: 'item', subjectId: item.id, action: 'item.released' } as const;
  const lines = await detailsOf(change.manager, about);
  return lines.some(
    (line) => typeof line === 'object' && line !== null && Reflect.get(line, 'inspectionId') === id,
  );
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
