import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { toDay } from '../rules/calendar/day.js';
import type { Condition, Gear } from '../rules/gear/gear.js';
import type { LoadChart } from '../rules/hosting/load-chart.js';
import { queryItems, type GearFilter } from './gear-filter.js';

/** What the register itself knows of an item, as the rules see it. */
export type ItemFactsOfGear = Omit<
  Gear,
  'inspections' | 'events' | 'defectDeadline' | 'commitments' | 'lifts'
>;

/** A row as both engines give it: SQLite has 0 and 1 for booleans, PostgreSQL has true and false. */
interface Row {
  readonly item_id: number;
  readonly tag: string;
  readonly kind: string;
  readonly store_id: number;
  readonly store_name: string;
  readonly condition: Condition;
  readonly serial: string | null;
  readonly missing: boolean | number;
  readonly label_legible: boolean | number;
  readonly certificate_on_file: boolean | number;
  readonly markings: string;
  readonly dimensions: string;
  readonly written_schemes: string;
  readonly owner: string | null;
  readonly load_chart: string | null;
  readonly hired_from: string | null;
  readonly hired_to: string | null;
  readonly manufactured_on: string | null;
  readonly first_used_on: string | null;
  readonly declaration_on: string | null;
}

/** Gives the register's part of the facts that every gate decides on. Plain rows: thousands are read at a time. */
@Injectable()
export class ItemFacts {
  /** The facts of the items of the filter, scrapped ones too, in the order of their numbers. */
  async load(manager: EntityManager, filter: GearFilter): Promise<ItemFactsOfGear[]> {
    const rows = await queryItems<Row>(manager, filter, (condition) => ({
      sql: `SELECT item.id AS item_id, item.tag, item.kind, item.store_id, store.name AS store_name, item.condition,
          item.serial, item.missing, item.label_legible, item.certificate_on_file,
          item.markings, item.dimensions, item.written_schemes, item.owner, item.load_chart,
          CAST(item.hired_from AS varchar(10)) AS hired_from,
          CAST(item.hired_to AS varchar(10)) AS hired_to,
          CAST(item.manufactured_on AS varchar(10)) AS manufactured_on,
          CAST(item.first_used_on AS varchar(10)) AS first_used_on,
          CAST(item.declaration_on AS varchar(10)) AS declaration_on
        FROM item JOIN store ON store.id = item.store_id WHERE ${condition} ORDER BY item.id`,
    }));
    return rows.map(asFacts);
  }
}

function asFacts(row: Row): ItemFactsOfGear {
  const markings = JSON.parse(row.markings) as ItemFactsOfGear['markings'];
  const dimensions = JSON.parse(row.dimensions) as ItemFactsOfGear['dimensions'];
  const writtenSchemes = JSON.parse(row.written_schemes) as ItemFactsOfGear['writtenSchemes'];
  return {
    itemId: row.item_id,
    tag: row.tag,
    kind: row.kind,
    storeId: row.store_id,
    storeName: row.store_name,
    condition: row.condition,
    missing: Boolean(row.missing),
    serialKnown: row.serial !== null,
    labelLegible: Boolean(row.label_legible),
    certificateOnFile: Boolean(row.certificate_on_file),
    markings,
    dimensions,
    writtenSchemes,
    ...(row.owner === null ? {} : { owner: row.owner }),
    ...hireOf(row),
    ...(row.load_chart === null ? {} : { loadChart: JSON.parse(row.load_chart) as LoadChart }),
    ...(row.manufactured_on === null ? {} : { manufacturedOn: toDay(row.manufactured_on) }),
    ...(row.first_used_on === null ? {} : { firstUsedOn: toDay(row.first_used_on) }),
    ...(row.declaration_on === null ? {} : { declarationOn: toDay(row.declaration_on) }),
  };
}

function hireOf({ hired_from: from, hired_to: to }: Row): Pick<ItemFactsOfGear, 'hire'> {
  if (from === null && to === null) return {};
  return { hire: { ...(from !== null && { from: toDay(from) }), ...(to !== null && { to: toDay(to) }) } };
}
