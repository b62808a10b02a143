import type { EntityManager } from 'typeorm';
import { checksInDoubt } from '../checks/day-checks.js';
import { countingRecords, type CountingRecord } from '../inspections/records-of-items.js';
import type { TracedRecordView } from './trace.dto.js';

/** An inspection that counts, and whether it is a check whose day nobody knows. */
export type TracedRecord = CountingRecord & { readonly clockDoubtful: boolean };

/** The inspections and checks of some items, by the days they were done; those by a clock in doubt are marked. */
export async function tracedRecords(
  manager: EntityManager,
  itemIds: readonly number[],
): Promise<TracedRecord[]> {
  const inDoubt = await checksInDoubt(manager, itemIds);
  const records = await countingRecords(manager, itemIds);
  return records.map((record) => ({ ...record, clockDoubtful: inDoubt.has(record.id) }));
}

/** A record as the pages of a trace show it. */
export function asTraced(record: TracedRecord): TracedRecordView {
  const { id, type, doneOn, outcome, doneBy, reportNumber, clockDoubtful } = record;
  return { id, type, doneOn, outcome, doneBy, reportNumber, clockDoubtful };
}
