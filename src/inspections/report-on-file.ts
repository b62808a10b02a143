import { hasCertificate } from '../documents/has-certificate.js';
import type { Change } from '../ledger/ledger.service.js';
import { changeItem, type LockedItem } from '../register/item-condition.js';
import type { Day } from '../rules/calendar/day.js';
import { requirementsInForce } from '../rules/due/in-force.js';
import type { SchemeDefinition } from '../rules/due/scheme.js';
import { insertInspection } from './insert-inspection.js';
import type { InspectionEntity } from './inspection.entity.js';
import { recordToVouch } from './records-of-items.js';

/**
 * Adds an inspection as `insertInspection` does, and keeps what the item says of its report in step. The report to be
 * kept is that of the last thorough examination (LOLER 1998 regulation 11(2)(a)(iv)). So when that is another record
 * than before, the report is on file only if that record has a number or a certificate, whatever was on file till then.
 * A record that is not the last one changes nothing.
 */
export async function insertWithReport(
  change: Change,
  item: LockedItem,
  input: Parameters<typeof insertInspection>[2],
): Promise<InspectionEntity> {
  const before = await recordToVouch(change.manager, item.id);
  const row = await insertInspection(change, item, input);
  const now = await recordToVouch(change.manager, item.id);
  if (now === undefined || now.id === before?.id) return row;
  const certificateOnFile = now.reportNumber !== null || (await hasCertificate(change.manager, now.id));
  if (!certificateOnFile && now.type !== 'thoroughExamination') return row;
  if (certificateOnFile === item.certificateOnFile) return row;
  await changeItem(change, item, { certificateOnFile });
  if (!certificateOnFile) {
    const detail = { tag: item.tag, inspectionId: now.id };
    change.note({ action: 'item.reportMissing', subjectKind: 'item', subjectId: item.id, detail });
  }
  return row;
}

/** Whether an item lacks a report that the rules of its store ask for before it is used. */
export function lacksReport(
  { kind, certificateOnFile }: Pick<LockedItem, 'kind' | 'certificateOnFile'>,
  scheme: SchemeDefinition,
  today: Day,
): boolean {
  if (certificateOnFile) return false;
  return requirementsInForce(scheme, kind, today).some(({ requirement }) => requirement.certificateRequired);
}
