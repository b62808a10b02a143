import type { Change } from '../ledger/ledger.service.js';
import { takeOutOfService, type LockedItem } from '../register/item-condition.js';
import type { Day } from '../rules/calendar/day.js';
import { DefectEntity } from './defect.entity.js';

/**
 * Records an immediate danger found with a locked item, inside a change: a defect, and quarantine where the item was
 * in service. It is a danger until a competent person says otherwise; what was scrapped stays scrapped.
 */
export async function recordDanger(
  change: Change,
  item: LockedItem,
  { description, today }: { description: string; today: Day },
): Promise<void> {
  const defect = { itemId: item.id, severity: 'immediateDanger' as const, description, lastDayOfUse: null };
  const row = change.manager.create(DefectEntity, {
    ...defect,
    reportedBy: change.actor.id,
    recordedAt: change.at,
    closedByInspectionId: null,
  });
  await change.manager.insert(DefectEntity, row);
  const detail = { tag: item.tag, defectId: row.id, severity: defect.severity, description };
  change.note({ action: 'defect.reported', subjectKind: 'item', subjectId: item.id, detail });
  if (item.condition === 'inService') {
    await takeOutOfService(change, item, { condition: 'quarantined', reason: description, today });
  }
}
