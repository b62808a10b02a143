import { InspectionEntity } from '../../inspections/inspection.entity.js';
import type { Change } from '../../ledger/ledger.service.js';
import { Problem } from '../../problem.js';
import { isUniqueViolation } from '../../storage/engine-errors.js';
import { insertItems, itemRow } from '../new-item.js';
import type { CheckedRows } from './check-rows.js';

/** Rows of one INSERT, well inside what SQLite takes. */
const ROWS_AT_A_TIME = 500;

/**
 * Enters the sound rows in the register, with the examination that each names, inside a change.
 * @throws Problem `tag_taken` when someone entered one of them a moment ago.
 */
export async function takeRows(change: Change, sound: CheckedRows['sound'], fileName: string): Promise<void> {
  const rows = sound.map(({ entry }) => itemRow(entry.input, change.at));
  const ids = await insertItems(change, rows).catch((error: unknown) => {
    if (!isUniqueViolation(error)) throw error;
    throw new Problem(
      'tag_taken',
      'Someone entered one of these tags or serial numbers a moment ago. Nothing was taken.',
    );
  });
  const doneBy = `not named; imported from ${fileName}`.slice(0, 120);
  const records = sound.flatMap(({ row, entry }, index) => {
    const itemId = ids[index];
    if (!entry.examined || itemId === undefined) return [];
    const remarks = `Taken over from row ${row.number} of ${fileName}. The report itself was not looked at.`;
    const { type, on } = entry.examined;
    return [{ tag: entry.input.tag, itemId, type, doneOn: on, outcome: 'fit' as const, doneBy, remarks }];
  });
  for (let start = 0; start < records.length; start += ROWS_AT_A_TIME) {
    await recordExaminations(change, records.slice(start, start + ROWS_AT_A_TIME));
  }
}

type Examined = Pick<InspectionEntity, 'itemId' | 'type' | 'doneOn' | 'outcome' | 'doneBy' | 'remarks'> & {
  readonly tag: string;
};

async function recordExaminations(change: Change, records: readonly Examined[]): Promise<void> {
  const unsaid = { nextDueOn: null, reportNumber: null, supersedesId: null };
  const recorded = { recordedBy: change.actor.id, recordedAt: change.at };
  const rows = records.map(({ tag: _, ...record }) =>
    change.manager.create(InspectionEntity, { ...record, ...unsaid, ...recorded }),
  );
  await change.manager.insert(InspectionEntity, rows);
  records.forEach(({ itemId, ...record }, index) => {
    const detail = { inspectionId: rows[index]?.id, ...record, ...unsaid };
    change.note({ action: 'inspection.recorded', subjectKind: 'item', subjectId: itemId, detail });
  });
}
