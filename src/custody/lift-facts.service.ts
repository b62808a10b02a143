import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { queryItems, type GearFilter } from '../register/gear-filter.js';
import { toDay } from '../rules/calendar/day.js';
import type { DayLifts } from '../rules/gear/gear.js';

interface Row {
  readonly item_id: number;
  readonly on_day: string;
  readonly lifts: number | string;
}

/** Gives the lifts that items were out for. Nobody counts them by item: each job day's count for all gear of the job. */
@Injectable()
export class LiftFacts {
  /**
   * The lifts by item number and day: of every day from the first of a promise that was kept to the day the item came
   * back, or to this day while it has not. Of two counts of a day the later one holds. Items without any have no entry.
   */
  async load(manager: EntityManager, filter: GearFilter): Promise<ReadonlyMap<number, DayLifts[]>> {
    const rows = await queryItems<Row>(manager, filter, (condition) => ({
      sql: `SELECT booked_item.item_id, CAST(lift_count.on_day AS varchar(10)) AS on_day,
          SUM(lift_count.lifts) AS lifts
        FROM lift_count
        JOIN booked_item ON booked_item.job_id = lift_count.job_id
          AND booked_item.state IN ('out', 'back', 'missing') AND booked_item.from_day <= lift_count.on_day
          AND (booked_item.state IN ('out', 'missing') OR booked_item.to_day >= lift_count.on_day)
        JOIN item ON item.id = booked_item.item_id
        WHERE ${condition} AND lift_count.lifts > 0
          AND NOT EXISTS (SELECT 1 FROM lift_count later WHERE later.job_id = lift_count.job_id
            AND later.on_day = lift_count.on_day AND later.id > lift_count.id)
        GROUP BY booked_item.item_id, lift_count.on_day
        ORDER BY booked_item.item_id, lift_count.on_day`,
    }));
    const lifts = new Map<number, DayLifts[]>();
    for (const { item_id, on_day, lifts: number } of rows) {
      // PostgreSQL gives a sum as text.
      const day = { on: toDay(on_day), lifts: Number(number) };
      lifts.set(item_id, [...(lifts.get(item_id) ?? []), day]);
    }
    return lifts;
  }
}
