import { Table, type MigrationInterface, type QueryRunner, type TableOptions } from 'typeorm';
import { instant, integer, key, reference, text, varchar } from './tables/columns.js';
import { appendOnly, undoAppendOnly } from './triggers.js';

const CALCULATION_SHEET: TableOptions = {
  name: 'calculation_sheet',
  columns: [key(), integer('job_id'), instant('kept_at'), varchar('fingerprint', 64), text('sheet')],
  indices: [{ name: 'ix_calculation_sheet_job', columnNames: ['job_id'] }],
  foreignKeys: [reference('fk_calculation_sheet_job', 'job_id', 'job')],
};

/** Columns that are added as they are written on both engines; a list starts empty on the rows that are there. */
const COLUMNS = [
  ['item', 'owner', 'varchar(120)'],
  ['item', 'hired_from', 'date'],
  ['item', 'hired_to', 'date'],
  ['item', 'load_chart', 'text'],
  ['job', 'parameters', `text NOT NULL DEFAULT '[]'`],
  ['job', 'truck_times', `text NOT NULL DEFAULT '[]'`],
] as const;

/** What the arithmetic of a lift needs: charts and hire of machines, a job's own figures, and the sheets kept with bookings. */
export class HeavyLift1795608000000 implements MigrationInterface {
  readonly name = 'HeavyLift1795608000000';

  async up(runner: QueryRunner): Promise<void> {
    for (const [table, column, type] of COLUMNS)
      await runner.query(`ALTER TABLE ${table} ADD COLUMN ${column} ${type}`);
    await runner.createTable(new Table(CALCULATION_SHEET));
    await appendOnly(runner, CALCULATION_SHEET.name);
  }

  async down(runner: QueryRunner): Promise<void> {
    await undoAppendOnly(runner, CALCULATION_SHEET.name);
    await runner.dropTable(CALCULATION_SHEET.name, false);
    for (const [table, column] of [...COLUMNS].reverse())
      await runner.query(`ALTER TABLE ${table} DROP COLUMN ${column}`);
  }
}
