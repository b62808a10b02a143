import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { queryItems, type GearFilter } from '../register/gear-filter.js';
import { toDay, type Day } from '../rules/calendar/day.js';
import type { EventType, Gear, GearEvent, InspectionRecord, InspectionType } from '../rules/gear/gear.js';

/** What inspections, events and open defects say of an item, as the rules see it. */
export type InspectionFactsOfGear = Pick<Gear, 'inspections' | 'events' | 'defectDeadline'>;

interface InspectionRow {
  readonly item_id: number;
  readonly type: InspectionType;
  readonly done_on: string;
  readonly outcome: 'fit' | 'unfit';
  readonly next_due_on: string | null;
}

/** Gives the inspections' part of the facts that every gate decides on, in three statements however many items. */
@Injectable()
export class InspectionFacts {
  /** The facts by item number. An item about which nothing was ever recorded has no entry. */
  async load(
    manager: EntityManager,
    filter: GearFilter,
  ): Promise<ReadonlyMap<number, InspectionFactsOfGear>> {
    const [inspections, events, deadlines] = [
      await latestInspections(manager, filter),
      await latestEvents(manager, filter),
      await defectDeadlines(manager, filter),
    ];
    const facts = new Map<number, InspectionFactsOfGear>();
    for (const itemId of new Set([...inspections.keys(), ...events.keys(), ...deadlines.keys()])) {
      const defectDeadline = deadlines.get(itemId);
      facts.set(itemId, {
        inspections: inspections.get(itemId) ?? [],
        events: events.get(itemId) ?? [],
        ...(defectDeadline === undefined ? {} : { defectDeadline }),
      });
    }
    return facts;
  }
}

/** The latest record of each type that none supersedes; of two on one day, the one recorded later. */
async function latestInspections(manager: EntityManager, filter: GearFilter) {
  const rows = await queryItems<InspectionRow>(manager, filter, (condition) => ({
    sql: `SELECT item_id, type, CAST(done_on AS varchar(10)) AS done_on, outcome,
        CAST(next_due_on AS varchar(10)) AS next_due_on
      FROM (
        SELECT inspection.item_id, inspection.type, inspection.done_on, inspection.outcome, inspection.next_due_on,
          ROW_NUMBER() OVER (
            PARTITION BY inspection.item_id, inspection.type ORDER BY inspection.done_on DESC, inspection.id DESC
          ) AS place
        FROM item JOIN inspection ON inspection.item_id = item.id
        WHERE ${condition}
          AND inspection.id NOT IN (SELECT supersedes_id FROM inspection WHERE supersedes_id IS NOT NULL)
      ) ranked WHERE place = 1 ORDER BY item_id, type`,
  }));
  return grouped<InspectionRow, InspectionRecord>(rows, ({ type, done_on, outcome, next_due_on }) => ({
    type,
    doneOn: toDay(done_on),
    outcome,
    ...(next_due_on === null ? {} : { nextDueOn: toDay(next_due_on) }),
  }));
}

/**
 * The latest event of each type: an earlier one asks for nothing more. With it the types of inspections that were
 * passed on the same day and recorded after it.
 */
async function latestEvents(manager: EntityManager, filter: GearFilter): Promise<Map<number, GearEvent[]>> {
  interface Row {
    readonly item_id: number;
    readonly type: EventType;
    readonly happened_on: string;
    readonly answer: InspectionType | null;
  }
  const rows = await queryItems<Row>(manager, filter, (condition) => ({
    sql: `SELECT ranked.item_id, ranked.type, CAST(ranked.happened_on AS varchar(10)) AS happened_on,
        answers.type AS answer
      FROM (
        SELECT gear_event.item_id, gear_event.type, gear_event.happened_on, gear_event.recorded_at,
          ROW_NUMBER() OVER (
            PARTITION BY gear_event.item_id, gear_event.type ORDER BY gear_event.happened_on DESC, gear_event.id DESC
          ) AS place
        FROM item JOIN gear_event ON gear_event.item_id = item.id WHERE ${condition}
      ) ranked
      LEFT JOIN inspection answers ON answers.item_id = ranked.item_id AND answers.done_on = ranked.happened_on
        AND answers.recorded_at > ranked.recorded_at AND answers.outcome = 'fit'
        AND NOT EXISTS (SELECT 1 FROM inspection later WHERE later.supersedes_id = answers.id)
      WHERE ranked.place = 1 ORDER BY ranked.item_id, ranked.type, answers.type`,
  }));
  const events = new Map<number, GearEvent[]>();
  for (const { item_id, type, happened_on, answer } of rows) {
    const ofItem = events.get(item_id) ?? [];
    const known = ofItem.find((event) => event.type === type);
    const answeredBy = [...(known?.answeredBy ?? []), ...(answer === null ? [] : [answer])];
    const event = { type, on: toDay(happened_on), ...(answeredBy.length === 0 ? {} : { answeredBy }) };
    events.set(item_id, [...ofItem.filter((each) => each !== known), event]);
  }
  return events;
}

async function defectDeadlines(manager: EntityManager, filter: GearFilter): Promise<Map<number, Day>> {
  const rows = await queryItems<{ item_id: number; deadline: string }>(manager, filter, (condition) => ({
    sql: `SELECT defect.item_id, CAST(MIN(defect.last_day_of_use) AS varchar(10)) AS deadline
      FROM item JOIN defect ON defect.item_id = item.id
      WHERE ${condition} AND defect.closed_by_inspection_id IS NULL AND defect.last_day_of_use IS NOT NULL
      GROUP BY defect.item_id`,
  }));
  return new Map(rows.map(({ item_id, deadline }) => [item_id, toDay(deadline)]));
}

function grouped<Row extends { readonly item_id: number }, Fact>(
  rows: readonly Row[],
  asFact: (row: Row) => Fact,
): Map<number, Fact[]> {
  const groups = new Map<number, Fact[]>();
  for (const row of rows) {
    const facts = groups.get(row.item_id);
    if (facts) facts.push(asFact(row));
    else groups.set(row.item_id, [asFact(row)]);
  }
  return groups;
}
