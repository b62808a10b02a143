import type { QueryRunner } from 'typeorm';

/**
 * What the database itself refuses, whoever asks. Each trigger raises one word that
 * `src/storage/engine-errors.ts` looks for; the two engines only spell it differently.
 */

const APPEND_ONLY_TABLES = ['ledger_entry', 'inspection', 'gear_event'];

/** Refuses to change or delete a row of the table. */
export async function appendOnly(runner: QueryRunner, table: string): Promise<void> {
  if (onPostgres(runner)) {
    await runner.query(
      `CREATE OR REPLACE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS
       $$ BEGIN RAISE EXCEPTION 'append_only'; END $$`,
    );
    await runner.query(
      `CREATE TRIGGER ${table}_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON ${table}
       FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()`,
    );
    return;
  }
  for (const event of ['UPDATE', 'DELETE']) {
    await runner.query(
      `CREATE TRIGGER ${table}_append_only_${event.toLowerCase()} BEFORE ${event} ON ${table}
       BEGIN SELECT RAISE(ABORT, 'append_only'); END`,
    );
  }
}

/** Takes the refusal of one table away again. On SQLite it goes with its table. */
export async function undoAppendOnly(runner: QueryRunner, table: string): Promise<void> {
  if (onPostgres(runner)) await runner.query(`DROP TRIGGER ${table}_append_only ON ${table}`);
}

const OVERLAP = `SELECT 1 FROM booked_item WHERE item_id = NEW.item_id AND id <> NEW.id
  AND state <> 'released' AND from_day <= NEW.to_day AND to_day >= NEW.from_day`;

/** Refuses a promise of an item on a day on which it is promised already. */
export async function noDoubleBooking(runner: QueryRunner): Promise<void> {
  if (onPostgres(runner)) {
    // The row lock makes two transactions that promise the same item wait for each other, so each sees the other's row.
    await runner.query(
      `CREATE FUNCTION refuse_double_booking() RETURNS trigger LANGUAGE plpgsql AS $$
       BEGIN
         PERFORM 1 FROM item WHERE id = NEW.item_id FOR UPDATE;
         IF NEW.state <> 'released' AND EXISTS (${OVERLAP}) THEN RAISE EXCEPTION 'double_booking'; END IF;
         RETURN NEW;
       END $$`,
    );
    await runner.query(
      `CREATE TRIGGER booked_item_no_double_booking BEFORE INSERT OR UPDATE ON booked_item
       FOR EACH ROW EXECUTE FUNCTION refuse_double_booking()`,
    );
    return;
  }
  for (const event of ['INSERT', 'UPDATE']) {
    await runner.query(
      `CREATE TRIGGER booked_item_no_double_booking_${event.toLowerCase()} AFTER ${event} ON booked_item
       WHEN NEW.state <> 'released' AND EXISTS (${OVERLAP})
       BEGIN SELECT RAISE(ABORT, 'double_booking'); END`,
    );
  }
}

/** Takes all of them away again. On SQLite they go with their tables. */
export async function undoTriggers(runner: QueryRunner): Promise<void> {
  if (!onPostgres(runner)) return;
  for (const table of APPEND_ONLY_TABLES) await undoAppendOnly(runner, table);
  await runner.query('DROP TRIGGER booked_item_no_double_booking ON booked_item');
  await runner.query('DROP FUNCTION refuse_change()');
  await runner.query('DROP FUNCTION refuse_double_booking()');
}

/** Whether the database that is migrated is PostgreSQL. */
export function onPostgres(runner: QueryRunner): boolean {
  return runner.connection.options.type === 'postgres';
}
