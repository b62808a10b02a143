import type { QueryRunner } from 'typeorm';

interface Source {
  readonly table: string;
  readonly events: readonly ('INSERT' | 'UPDATE')[];
  /** Gives the numbers of the items whose due day may move when the row `NEW` is written. */
  readonly items: string;
}

/**
 * Every table that a due day is worked out from. A trigger sees each write, whichever way it comes, so no new use
 * case can forget to say that a due day moved.
 */
const SOURCES: readonly Source[] = [
  { table: 'item', events: ['INSERT', 'UPDATE'], items: 'SELECT NEW.id' },
  { table: 'inspection', events: ['INSERT'], items: 'SELECT NEW.item_id' },
  { table: 'gear_event', events: ['INSERT'], items: 'SELECT NEW.item_id' },
  { table: 'defect', events: ['INSERT', 'UPDATE'], items: 'SELECT NEW.item_id' },
  // Lifts are counted by job, for all gear that was out on the day.
  {
    table: 'lift_count',
    events: ['INSERT'],
    items: 'SELECT item_id FROM booked_item WHERE booked_item.job_id = NEW.job_id',
  },
  { table: 'booked_item', events: ['INSERT', 'UPDATE'], items: 'SELECT NEW.item_id' },
  // The scheme of the store holds for its gear, and its time zone says what today is.
  { table: 'store', events: ['UPDATE'], items: 'SELECT id FROM item WHERE item.store_id = NEW.id' },
];

/** Notes with every write that could move a due day whose it is. */
export async function markDueStale(runner: QueryRunner): Promise<void> {
  for (const { table, events, items } of SOURCES) {
    const insert = `INSERT INTO due_stale (item_id) ${items}`;
    if (onPostgres(runner)) {
      await runner.query(
        `CREATE FUNCTION ${table}_due_stale() RETURNS trigger LANGUAGE plpgsql AS
         $$ BEGIN ${insert}; RETURN NULL; END $$`,
      );
      await runner.query(
        `CREATE TRIGGER ${table}_due_stale AFTER ${events.join(' OR ')} ON ${table}
         FOR EACH ROW EXECUTE FUNCTION ${table}_due_stale()`,
      );
      continue;
    }
    for (const event of events)
      await runner.query(
        `CREATE TRIGGER ${table}_due_stale_${event.toLowerCase()} AFTER ${event} ON ${table}
         BEGIN ${insert}; END`,
      );
  }
}

/** Takes the triggers away again. */
export async function undoMarkDueStale(runner: QueryRunner): Promise<void> {
  for (const { table, events } of SOURCES) {
    if (onPostgres(runner)) {
      await runner.query(`DROP TRIGGER ${table}_due_stale ON ${table}`);
      await runner.query(`DROP FUNCTION ${table}_due_stale()`);
      continue;
    }
    for (const event of events) await runner.query(`DROP TRIGGER ${table}_due_stale_${event.toLowerCase()}`);
  }
}

function onPostgres(runner: QueryRunner): boolean {
  return runner.connection.options.type === 'postgres';
}
