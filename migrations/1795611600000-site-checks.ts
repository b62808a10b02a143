import { Table, type MigrationInterface, type QueryRunner, type TableOptions } from 'typeorm';
import { boolean, day, instant, integer, key, optional, reference, text, varchar } from './tables/columns.js';
import { appendOnly, undoAppendOnly } from './triggers.js';

/** A check before use with its answers: what the person who was about to use the item saw and measured. */
const PRE_USE_CHECK: TableOptions = {
  name: 'pre_use_check',
  columns: [
    key(),
    integer('inspection_id'),
    integer('item_id'),
    optional(integer('job_id')),
    day('checked_on'),
    instant('checked_at'),
    text('answers'),
    boolean('clock_doubtful'),
    optional(integer('checked_by')),
    instant('received_at'),
  ],
  uniques: [{ name: 'uq_pre_use_check_inspection_id', columnNames: ['inspection_id'] }],
  indices: [
    { name: 'ix_pre_use_check_item', columnNames: ['item_id', 'checked_on'] },
    { name: 'ix_pre_use_check_job', columnNames: ['job_id', 'checked_on'] },
  ],
  foreignKeys: [
    reference('fk_pre_use_check_inspection', 'inspection_id', 'inspection'),
    reference('fk_pre_use_check_item', 'item_id', 'item'),
    reference('fk_pre_use_check_job', 'job_id', 'job'),
  ],
};

/** A report of thorough examination: number and particulars. A correction is a new report that supersedes. */
const EXAMINATION_REPORT: TableOptions = {
  name: 'examination_report',
  columns: [key(), integer('inspection_id'), varchar('number', 30), text('particulars'), instant('made_at')],
  uniques: [
    { name: 'uq_examination_report_inspection_id', columnNames: ['inspection_id'] },
    { name: 'uq_examination_report_number', columnNames: ['number'] },
  ],
  foreignKeys: [reference('fk_examination_report_inspection', 'inspection_id', 'inspection')],
};

/** A photo or a certificate, kept by its content under the data folder, and what it belongs to. */
const DOCUMENT: TableOptions = {
  name: 'document',
  columns: [
    key(),
    varchar('sha256', 64),
    varchar('media_type', 40),
    integer('size_bytes'),
    varchar('name', 200),
    varchar('kind', 20),
    integer('item_id'),
    optional(integer('inspection_id')),
    optional(integer('defect_id')),
    optional(integer('kept_by')),
    instant('kept_at'),
  ],
  indices: [
    { name: 'ix_document_item', columnNames: ['item_id'] },
    { name: 'ix_document_sha256', columnNames: ['sha256'] },
  ],
  foreignKeys: [
    reference('fk_document_item', 'item_id', 'item'),
    reference('fk_document_inspection', 'inspection_id', 'inspection'),
    reference('fk_document_defect', 'defect_id', 'defect'),
  ],
};

/** How many lifts the gear of a job made on a day. A later line for the same day takes the place of the earlier one. */
const LIFT_COUNT: TableOptions = {
  name: 'lift_count',
  columns: [
    key(),
    integer('job_id'),
    day('on_day'),
    integer('lifts'),
    optional(integer('recorded_by')),
    instant('recorded_at'),
  ],
  indices: [{ name: 'ix_lift_count_job', columnNames: ['job_id', 'on_day'] }],
  foreignKeys: [reference('fk_lift_count_job', 'job_id', 'job')],
};

/** Something that storeman and manager of a store must hear at once. */
const NOTICE: TableOptions = {
  name: 'notice',
  columns: [
    key(),
    varchar('kind', 30),
    integer('store_id'),
    optional(integer('item_id')),
    optional(integer('job_id')),
    text('detail'),
    instant('raised_at'),
    optional(instant('settled_at')),
  ],
  indices: [{ name: 'ix_notice_store', columnNames: ['store_id', 'settled_at'] }],
  foreignKeys: [
    reference('fk_notice_store', 'store_id', 'store'),
    reference('fk_notice_item', 'item_id', 'item'),
    reference('fk_notice_job', 'job_id', 'job'),
  ],
};

/** Each after the tables it refers to. */
const TABLES = [PRE_USE_CHECK, EXAMINATION_REPORT, DOCUMENT, LIFT_COUNT, NOTICE];

const APPEND_ONLY = [PRE_USE_CHECK, EXAMINATION_REPORT, DOCUMENT, LIFT_COUNT].map(({ name }) => name);

const COLUMNS = [
  ['item', 'batch', 'varchar(60)'],
  ['defect', 'kind', 'varchar(40)'],
  ['defect', 'figures', 'text'],
] as const;

/** Checks on site, reports, documents, lifts counted, notices, and the maker's batch of an item. */
export class SiteChecks1795611600000 implements MigrationInterface {
  readonly name = 'SiteChecks1795611600000';

  async up(runner: QueryRunner): Promise<void> {
    for (const [table, column, type] of COLUMNS)
      await runner.query(`ALTER TABLE ${table} ADD COLUMN ${column} ${type}`);
    for (const table of TABLES) await runner.createTable(new Table(table));
    for (const table of APPEND_ONLY) await appendOnly(runner, table);
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const table of APPEND_ONLY) await undoAppendOnly(runner, table);
    for (const { name } of [...TABLES].reverse()) await runner.dropTable(name, false);
    for (const [table, column] of [...COLUMNS].reverse())
      await runner.query(`ALTER TABLE ${table} DROP COLUMN ${column}`);
  }
}
