import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { Clock } from '../clock.js';
import { queryItems, type GearFilter } from '../register/gear-filter.js';
import { toDay } from '../rules/calendar/day.js';
import type { DayLifts } from '../rules/gear/gear.js';
import { lastDayAway } from './stays.js';

interface Row {
  readonly item_id: number;
  readonly on_day: string;
  readonly lifts: number;
  readonly state: 'out' | 'back' | 'missing';
  readonly to_day: string;
  readonly settled_at: string | null;
  readonly time_zone: string;
}

/** Gives the lifts that items were out for. Nobody counts them by item: each job day's count for all gear of the job. */
@Injectable()
export class LiftFacts {
  constructor(private readonly clock: Clock) {}

  /**
   * The lifts by item number and day: of every day from the first of a promise that was kept to the day the item came
   * back, or to this day while it has not. Of two counts of a day the later one holds. Items without any have no entry.
   */
  async load(manager: EntityManager, filter: GearFilter): Promise<ReadonlyMap<number, DayLifts[]>> {
    const rows = await queryItems<Row>(manager, filter, (condition) => ({
      sql: `SELECT booked_item.item_id, CAST(lift_count.on_day AS varchar(10)) AS on_day, lift_count.lifts,
          booked_item.state, CAST(booked_item.to_day AS varchar(10)) AS to_day, booked_item.settled_at,
          store.time_zone
        FROM lift_count
        JOIN booked_item ON booked_item.job_id = lift_count.job_id
          AND booked_item.state IN ('out', 'back', 'missing') AND booked_item.from_day <= lift_count.on_day
        JOIN job ON job.id = lift_count.job_id
        JOIN store ON store.id = job.store_id
        JOIN item ON item.id = booked_item.item_id
        WHERE ${condition} AND lift_count.lifts > 0
          AND NOT EXISTS (SELECT 1 FROM lift_count later WHERE later.job_id = lift_count.job_id
            AND later.on_day = lift_count.on_day AND later.id > lift_count.id)
        ORDER BY booked_item.item_id, lift_count.on_day`,
    }));
    const lifts = new Map<number, DayLifts[]>();
    for (const row of rows) {
      if (!this.wasAway(row)) continue;
      const known = lifts.get(row.item_id) ?? [];
      lifts.set(row.item_id, known);
      addTo(known, { on: toDay(row.on_day), lifts: row.lifts });
    }
    return lifts;
  }

  private wasAway({ state, on_day, to_day, settled_at, time_zone }: Row): boolean {
    if (state !== 'back') return true;
    return on_day <= lastDayAway({ toDay: toDay(to_day), settledAt: settled_at }, time_zone, this.clock);
  }
}

/** Adds lifts to days in order: those of two jobs on one day are one entry. */
function addTo(days: DayLifts[], { on, lifts }: DayLifts): void {
  const last = days.at(-1);
  if (last?.on === on) days.splice(-1, 1, { on, lifts: last.lifts + lifts });
  else days.push({ on, lifts });
}
