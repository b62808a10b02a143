import type { EntityManager } from 'typeorm';
import { toDay, type Day } from '../../rules/calendar/day.js';

/** How often what falls due at a store on a day has changed, and when it did last. */
export interface ChangedDay {
  readonly on: Day;
  readonly sequence: number;
  /** ISO 8601 in UTC. */
  readonly changedAt: string;
}

/** The days of a store on which something fell due at some time, from one day through another. */
export async function changedDays(
  manager: EntityManager,
  { storeId, from, through }: { storeId: number; from: Day; through: Day },
): Promise<ChangedDay[]> {
  const rows = await manager.query<{ on_day: string; sequence: number; changed_at: string }[]>(
    `SELECT CAST(on_day AS varchar(10)) AS on_day, sequence, changed_at FROM calendar_day
     WHERE store_id = $1 AND on_day >= $2 AND on_day <= $3 ORDER BY on_day`,
    [storeId, from, through],
  );
  return rows.map(({ on_day, sequence, changed_at }) => ({
    on: toDay(on_day),
    sequence,
    changedAt: changed_at,
  }));
}
