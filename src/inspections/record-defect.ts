import type { Change } from '../ledger/ledger.service.js';
import { takeOutOfService, type LockedItem } from '../register/item-condition.js';
import type { Day } from '../rules/calendar/day.js';
import type { Working } from '../rules/working.js';
import { DefectEntity } from './defect.entity.js';
import type { Severity } from './severity.js';

/** What is wrong with an item, as its reporter says. */
export interface FoundDefect {
  readonly severity: Severity;
  readonly description: string;
  /** For a danger by a date: the last day of use. */
  readonly lastDayOfUse?: string | null | undefined;
  /** The point of the checklist that failed; absent where it was found otherwise. */
  readonly kind?: string;
  /** What was measured, with the limit and its source. */
  readonly figures?: readonly Working[];
}

/**
 * Records a defect of a locked item inside a change. An immediate danger puts an item in service into quarantine: it is
 * a danger until a competent person says otherwise. What was scrapped stays scrapped. Gives the number of the defect.
 */
export async function recordDefect(
  change: Change,
  item: LockedItem,
  found: FoundDefect & { readonly today: Day },
): Promise<number> {
  const { severity, description, lastDayOfUse = null, kind = null, figures = [], today } = found;
  const row = change.manager.create(DefectEntity, {
    itemId: item.id,
    severity,
    description,
    lastDayOfUse,
    kind,
    figures: figures.length === 0 ? null : figures,
    reportedBy: change.actor.id,
    recordedAt: change.at,
    closedByInspectionId: null,
  });
  await change.manager.insert(DefectEntity, row);
  const measured = figures.map(({ result }) => result);
  const detail = {
    tag: item.tag,
    defectId: row.id,
    severity,
    description,
    lastDayOfUse,
    ...(kind !== null && { kind, measured }),
  };
  change.note({ action: 'defect.reported', subjectKind: 'item', subjectId: item.id, detail });
  if (severity === 'immediateDanger' && item.condition === 'inService') {
    await takeOutOfService(change, item, { condition: 'quarantined', reason: description, today });
  }
  return row.id;
}
