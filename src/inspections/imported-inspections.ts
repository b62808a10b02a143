import type { Change } from '../ledger/ledger.service.js';
import type { InspectionType } from '../rules/gear/gear.js';
import { InspectionEntity } from './inspection.entity.js';

/** An inspection that a list of gear tells of: nobody here saw the report. */
export interface ImportedInspection {
  readonly itemId: number;
  readonly tag: string;
  readonly type: InspectionType;
  readonly doneOn: string;
  readonly doneBy: string;
  readonly remarks: string;
}

/** Rows of one INSERT, well inside what SQLite takes. */
const ROWS_AT_A_TIME = 500;

/** Takes over passed inspections from an import, inside its change. They are marked as imported by their words. */
export async function takeOverInspections(
  change: Change,
  inspections: readonly ImportedInspection[],
): Promise<void> {
  const unsaid = { nextDueOn: null, reportNumber: null, supersedesId: null };
  const recorded = { outcome: 'fit' as const, recordedBy: change.actor.id, recordedAt: change.at };
  for (let start = 0; start < inspections.length; start += ROWS_AT_A_TIME) {
    const some = inspections.slice(start, start + ROWS_AT_A_TIME);
    const rows = some.map(({ itemId, type, doneOn, doneBy, remarks }) =>
      change.manager.create(InspectionEntity, {
        itemId,
        type,
        doneOn,
        doneBy,
        remarks,
        ...unsaid,
        ...recorded,
      }),
    );
    await change.manager.insert(InspectionEntity, rows);
    some.forEach(({ itemId, ...inspection }, index) => {
      const detail = { inspectionId: rows[index]?.id, ...inspection, outcome: recorded.outcome };
      change.note({ action: 'inspection.recorded', subjectKind: 'item', subjectId: itemId, detail });
    });
  }
}
