import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { Clock } from '../clock.js';
import { queryItems, type GearFilter } from '../register/gear-filter.js';
import { toDay, type Day } from '../rules/calendar/day.js';
import { lastDayAway } from './stays.js';

interface Row {
  readonly item_id: number;
  readonly still_out: number;
  readonly to_day: string;
  readonly settled_at: string | null;
  readonly time_zone: string;
}

/** Gives the day on which items were last out on a job: gear that lies still for long is looked at before it is used. */
@Injectable()
export class AwayFacts {
  constructor(private readonly clock: Clock) {}

  /** The days by item number, `today` for what is out. What was never out has no entry. */
  async load(manager: EntityManager, filter: GearFilter, today: Day): Promise<ReadonlyMap<number, Day>> {
    const rows = await queryItems<Row>(manager, filter, (condition) => ({
      sql: `SELECT booked_item.item_id, MAX(CASE WHEN booked_item.state = 'out' THEN 1 ELSE 0 END) AS still_out,
          CAST(MAX(booked_item.to_day) AS varchar(10)) AS to_day, MAX(booked_item.settled_at) AS settled_at,
          store.time_zone
        FROM booked_item
        JOIN item ON item.id = booked_item.item_id
        JOIN store ON store.id = item.store_id
        WHERE ${condition} AND booked_item.state IN ('out', 'back', 'missing')
        GROUP BY booked_item.item_id, store.time_zone`,
    }));
    return new Map(rows.map((row) => [row.item_id, row.still_out > 0 ? today : this.lastDay(row)]));
  }

  private lastDay({ to_day, settled_at, time_zone }: Row): Day {
    return lastDayAway({ toDay: toDay(to_day), settledAt: settled_at }, time_zone, this.clock);
  }
}
