import { takeOverInspections } from '../../inspections/imported-inspections.js';
import type { Change } from '../../ledger/ledger.service.js';
import { Problem } from '../../problem.js';
import { isUniqueViolation } from '../../storage/engine-errors.js';
import { insertItems, itemRow } from '../new-item.js';
import type { CheckedRows } from './check-rows.js';

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
    return [{ tag: entry.input.tag, itemId, type, doneOn: on, doneBy, remarks }];
  });
  await takeOverInspections(change, records);
}
