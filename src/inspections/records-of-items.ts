import { In, type EntityManager } from 'typeorm';
import { Problem } from '../problem.js';
import { toDay, type Day } from '../rules/calendar/day.js';
import type { EventType, InspectionType } from '../rules/gear/gear.js';
import { DefectEntity } from './defect.entity.js';
import { GearEventEntity } from './gear-event.entity.js';
import { InspectionEntity } from './inspection.entity.js';
import type { Severity } from './severity.js';

/** An inspection that counts: no later record corrects it. */
export interface CountingRecord {
  readonly id: number;
  readonly itemId: number;
  readonly type: InspectionType;
  readonly doneOn: Day;
  readonly outcome: 'fit' | 'unfit';
  readonly nextDueOn: string | null;
  readonly doneBy: string;
  readonly reportNumber: string | null;
  readonly recordedAt: string;
}

/** A defect, open or closed. */
export interface ReportedDefect {
  readonly id: number;
  readonly itemId: number;
  readonly severity: Severity;
  readonly description: string;
  readonly lastDayOfUse: string | null;
  readonly reportedBy: number | null;
  readonly recordedAt: string;
  readonly closedByInspectionId: number | null;
}

/** Something that happened to an item. */
export interface ReportedEvent {
  readonly itemId: number;
  readonly type: EventType;
  readonly happenedOn: string;
  readonly remarks: string;
}

/** The inspections of some items that count, by the days they were done. */
export async function countingRecords(
  manager: EntityManager,
  itemIds: readonly number[],
): Promise<CountingRecord[]> {
  const rows = await manager.find(InspectionEntity, {
    where: { itemId: In([...itemIds]) },
    order: { doneOn: 'ASC', id: 'ASC' },
  });
  const corrected = new Set(rows.map(({ supersedesId }) => supersedesId));
  return rows
    .filter(({ id }) => !corrected.has(id))
    .map(({ id, itemId, type, doneOn, outcome, nextDueOn, doneBy, reportNumber, recordedAt }) => {
      const record = { id, itemId, type, outcome, nextDueOn, doneBy, reportNumber, recordedAt };
      return { ...record, doneOn: toDay(doneOn) };
    });
}

/** The record whose report an item is used by, among those of it that count; undefined when it passed nothing. */
export async function recordToVouch(
  manager: EntityManager,
  itemId: number,
): Promise<CountingRecord | undefined> {
  return lastToVouch(await countingRecords(manager, [itemId]));
}

/**
 * The last thorough examination passed, of records by their days; of one day that recorded last. Where there is none,
 * the last proof load test passed.
 */
export function lastToVouch<Record extends Pick<CountingRecord, 'type' | 'outcome'>>(
  records: readonly Record[],
): Record | undefined {
  const lastOf = (type: InspectionType) =>
    records.findLast((record) => record.type === type && record.outcome === 'fit');
  return lastOf('thoroughExamination') ?? lastOf('proofLoadTest');
}

/** The last thorough examination of an item before a day, whatever came of it; `except` is a record to be left out. */
export async function lastExamined(
  manager: EntityManager,
  itemId: number,
  { before, except }: { before: Day; except: number | undefined },
): Promise<CountingRecord | undefined> {
  const records = await countingRecords(manager, [itemId]);
  return records.findLast(
    ({ id, type, doneOn }) => type === 'thoroughExamination' && doneOn < before && id !== except,
  );
}

/** Every defect of some items, the first reported first. */
export async function reportedDefects(
  manager: EntityManager,
  itemIds: readonly number[],
): Promise<ReportedDefect[]> {
  const rows = await manager.find(DefectEntity, {
    where: { itemId: In([...itemIds]) },
    order: { id: 'ASC' },
  });
  return rows.map(asReported);
}

/** One defect. @throws Problem `not_found`. */
export async function requireDefect(manager: EntityManager, id: number): Promise<ReportedDefect> {
  const row = await manager.findOneBy(DefectEntity, { id });
  if (!row) throw new Problem('not_found', `There is no defect with the number ${id}.`);
  return asReported(row);
}

/** Everything that happened to some items, by the days. */
export async function reportedEvents(
  manager: EntityManager,
  itemIds: readonly number[],
): Promise<ReportedEvent[]> {
  const rows = await manager.find(GearEventEntity, {
    where: { itemId: In([...itemIds]) },
    order: { happenedOn: 'ASC', id: 'ASC' },
  });
  return rows.map(({ itemId, type, happenedOn, remarks }) => ({ itemId, type, happenedOn, remarks }));
}

function asReported(row: DefectEntity): ReportedDefect {
  const { id, itemId, severity, description, lastDayOfUse, reportedBy, recordedAt } = row;
  const { closedByInspectionId } = row;
  return { id, itemId, severity, description, lastDayOfUse, reportedBy, recordedAt, closedByInspectionId };
}
