import { IsNull } from 'typeorm';
import type { Clock } from '../clock.js';
import type { Change } from '../ledger/ledger.service.js';
import { settleNoticesOf } from '../notices/notices.js';
import { Problem } from '../problem.js';
import { returnToService, type LockedItem } from '../register/item-condition.js';
import { findStore } from '../stores/find-store.js';
import { DefectEntity } from './defect.entity.js';
import type { InspectionEntity } from './inspection.entity.js';

/**
 * Ends quarantine or repair of a locked item by an examination it passed, and closes its open defects and notices. Called
 * only for a thorough examination recorded by a competent person.
 * @throws Problem `not_allowed_now` when they reported it themselves, when the examination is older than anything that
 * it should end, or when there is nothing to end.
 */
export async function release(
  change: Change,
  item: LockedItem,
  { examination, clock }: { examination: Pick<InspectionEntity, 'id' | 'doneOn'>; clock: Clock },
): Promise<void> {
  const open = await change.manager.find(DefectEntity, {
    where: { itemId: item.id, closedByInspectionId: IsNull() },
  });
  if (item.condition === 'inService' && open.length === 0) {
    throw new Problem(
      'not_allowed_now',
      `${item.tag} is in service and has no open defect: there is nothing to release.`,
    );
  }
  refuseOwnReport(change, item, open);
  await refuseOlder(change, item, { open, doneOn: examination.doneOn, clock });
  for (const defect of open) {
    await change.manager.update(DefectEntity, { id: defect.id }, { closedByInspectionId: examination.id });
    const detail = { defectId: defect.id, inspectionId: examination.id };
    change.note({ action: 'defect.closed', subjectKind: 'item', subjectId: item.id, detail });
  }
  if (item.condition !== 'inService') await returnToService(change, item, examination.id);
  await settleNoticesOf(change, item);
}

/** An examination says nothing of what happened after it. Of one day it is taken as the later: it was recorded after. */
async function refuseOlder(
  change: Change,
  item: LockedItem,
  { open, doneOn, clock }: { open: readonly DefectEntity[]; doneOn: string; clock: Clock },
): Promise<void> {
  const refuse = (why: string) => {
    throw new Problem('not_allowed_now', `${item.tag} cannot be released: ${why}, after that examination.`);
  };
  if (item.conditionSince !== null && doneOn < item.conditionSince)
    refuse(`it was taken out of service on ${item.conditionSince}`);
  const store = await findStore(change.manager, item.storeId);
  if (!store) throw new Error(`There is no store ${item.storeId}.`);
  for (const { id, recordedAt } of open) {
    const reportedOn = clock.dayAt(recordedAt, store.timeZone);
    if (doneOn < reportedOn) refuse(`defect ${id} was reported on ${reportedOn}`);
  }
}

/** Nobody passes what they reported themselves. An observation takes nothing out of use, so its reporter may close it. */
function refuseOwnReport({ actor }: Change, item: LockedItem, open: readonly DefectEntity[]): void {
  const dangers = open.filter(({ severity }) => severity !== 'observation');
  const reporters = [
    ...(item.condition === 'inService' ? [] : [item.conditionReportedBy]),
    ...dangers.map(({ reportedBy }) => reportedBy),
  ];
  if (actor.id !== null && !reporters.includes(actor.id)) return;
  throw new Problem(
    'not_allowed_now',
    `You reported ${item.tag} yourself: another competent person must examine it.`,
  );
}
