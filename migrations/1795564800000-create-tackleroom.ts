import {
  Table,
  type MigrationInterface,
  type QueryRunner,
  type TableColumnOptions,
  type TableOptions,
} from 'typeorm';
import { sortKeysBySign } from './key-order.js';
import { appendOnly, noDoubleBooking, undoTriggers } from './triggers.js';

/** The first history: people, stores, the register, inspections, jobs, custody and the ledger. */
export class CreateTackleroom1795564800000 implements MigrationInterface {
  readonly name = 'CreateTackleroom1795564800000';

  async up(runner: QueryRunner): Promise<void> {
    for (const table of TABLES) await runner.createTable(new Table(table));
    await runner.query(
      `INSERT INTO ledger_head (id, number, hash) VALUES (1, 0, '0000000000000000000000000000000000000000000000000000000000000000')`,
    );
    for (const table of ['ledger_entry', 'inspection', 'gear_event']) await appendOnly(runner, table);
    await noDoubleBooking(runner);
    await sortKeysBySign(runner);
  }

  async down(runner: QueryRunner): Promise<void> {
    await undoTriggers(runner);
    for (const table of [...TABLES].reverse()) await runner.dropTable(table.name, false);
  }
}

const key = (name = 'id'): TableColumnOptions => ({
  name,
  type: 'integer',
  isPrimary: true,
  isGenerated: true,
  generationStrategy: 'increment',
});
const textKey = (name: string, length: number): TableColumnOptions => ({
  ...varchar(name, length),
  isPrimary: true,
});
const varchar = (name: string, length: number): TableColumnOptions => ({
  name,
  type: 'varchar',
  length: String(length),
});
const integer = (name: string): TableColumnOptions => ({ name, type: 'integer' });
const boolean = (name: string): TableColumnOptions => ({ name, type: 'boolean' });
const day = (name: string): TableColumnOptions => ({ name, type: 'date' });
const text = (name: string): TableColumnOptions => ({ name, type: 'text' });
const instant = (name: string): TableColumnOptions => varchar(name, 24);
const optional = (column: TableColumnOptions): TableColumnOptions => ({ ...column, isNullable: true });

function reference(
  name: string,
  column: string,
  table: string,
  onDelete: 'RESTRICT' | 'CASCADE' = 'RESTRICT',
) {
  return { name, columnNames: [column], referencedTableName: table, referencedColumnNames: ['id'], onDelete };
}

const PERSON: TableOptions = {
  name: 'person',
  columns: [
    key(),
    varchar('name', 120),
    varchar('sign_in_name', 120),
    varchar('password_hash', 255),
    text('roles'),
    boolean('active'),
    instant('created_at'),
    integer('version'),
  ],
  uniques: [{ name: 'uq_person_sign_in_name', columnNames: ['sign_in_name'] }],
};

const SESSION: TableOptions = {
  name: 'session',
  columns: [textKey('token_hash', 64), integer('person_id'), instant('created_at'), instant('last_seen_at')],
  indices: [{ name: 'ix_session_person', columnNames: ['person_id'] }],
  foreignKeys: [reference('fk_session_person', 'person_id', 'person', 'CASCADE')],
};

const STORE: TableOptions = {
  name: 'store',
  columns: [
    key(),
    varchar('name', 80),
    varchar('name_key', 80),
    varchar('address', 200),
    varchar('scheme', 20),
    varchar('time_zone', 60),
    integer('version'),
  ],
  uniques: [{ name: 'uq_store_name_key', columnNames: ['name_key'] }],
};

const ITEM: TableOptions = {
  name: 'item',
  columns: [
    key(),
    varchar('tag', 40),
    varchar('tag_key', 40),
    optional(varchar('serial', 60)),
    optional(varchar('serial_key', 60)),
    optional(varchar('look_alike_key', 60)),
    varchar('maker', 80),
    varchar('maker_key', 80),
    varchar('kind', 40),
    integer('store_id'),
    varchar('condition', 20),
    optional(varchar('condition_reason', 500)),
    optional(integer('condition_reported_by')),
    optional(day('condition_since')),
    boolean('missing'),
    boolean('label_legible'),
    boolean('certificate_on_file'),
    text('markings'),
    text('dimensions'),
    optional(day('manufactured_on')),
    optional(day('first_used_on')),
    optional(day('declaration_on')),
    text('written_schemes'),
    varchar('notes', 1000),
    instant('created_at'),
    instant('updated_at'),
    integer('version'),
  ],
  uniques: [
    { name: 'uq_item_tag_key', columnNames: ['tag_key'] },
    { name: 'uq_item_maker_key_serial_key', columnNames: ['maker_key', 'serial_key'] },
  ],
  indices: [
    { name: 'ix_item_kind_store', columnNames: ['kind', 'store_id'] },
    { name: 'ix_item_serial_key', columnNames: ['serial_key'] },
    { name: 'ix_item_look_alike_key', columnNames: ['maker_key', 'look_alike_key'] },
    { name: 'ix_item_store', columnNames: ['store_id'] },
    { name: 'ix_item_condition', columnNames: ['condition'] },
  ],
  foreignKeys: [reference('fk_item_store', 'store_id', 'store')],
};

const INSPECTION: TableOptions = {
  name: 'inspection',
  columns: [
    key(),
    integer('item_id'),
    varchar('type', 30),
    day('done_on'),
    varchar('outcome', 10),
    optional(day('next_due_on')),
    varchar('done_by', 120),
    optional(varchar('report_number', 60)),
    varchar('remarks', 1000),
    optional(integer('supersedes_id')),
    optional(integer('recorded_by')),
    instant('recorded_at'),
  ],
  uniques: [{ name: 'uq_inspection_supersedes_id', columnNames: ['supersedes_id'] }],
  indices: [{ name: 'ix_inspection_item_type_day', columnNames: ['item_id', 'type', 'done_on'] }],
  foreignKeys: [reference('fk_inspection_item', 'item_id', 'item')],
};

const GEAR_EVENT: TableOptions = {
  name: 'gear_event',
  columns: [
    key(),
    integer('item_id'),
    varchar('type', 20),
    day('happened_on'),
    varchar('remarks', 500),
    optional(integer('reported_by')),
    instant('recorded_at'),
  ],
  indices: [{ name: 'ix_gear_event_item', columnNames: ['item_id', 'happened_on'] }],
  foreignKeys: [reference('fk_gear_event_item', 'item_id', 'item')],
};

const DEFECT: TableOptions = {
  name: 'defect',
  columns: [
    key(),
    integer('item_id'),
    varchar('severity', 20),
    varchar('description', 500),
    optional(day('last_day_of_use')),
    optional(integer('reported_by')),
    instant('recorded_at'),
    optional(integer('closed_by_inspection_id')),
  ],
  indices: [{ name: 'ix_defect_item', columnNames: ['item_id'] }],
  foreignKeys: [
    reference('fk_defect_item', 'item_id', 'item'),
    reference('fk_defect_closed_by', 'closed_by_inspection_id', 'inspection'),
  ],
};

const JOB: TableOptions = {
  name: 'job',
  columns: [
    key(),
    varchar('reference', 40),
    varchar('reference_key', 40),
    varchar('name', 120),
    varchar('site', 200),
    varchar('scheme', 20),
    varchar('method', 40),
    integer('store_id'),
    day('load_out_day'),
    day('back_day'),
    boolean('other_stores'),
    text('counts'),
    text('panels'),
    text('adjustments'),
    text('added_lines'),
    text('choices'),
    boolean('cancelled'),
    instant('created_at'),
    instant('updated_at'),
    integer('version'),
  ],
  uniques: [{ name: 'uq_job_reference_key', columnNames: ['reference_key'] }],
  indices: [{ name: 'ix_job_window', columnNames: ['load_out_day', 'back_day'] }],
  foreignKeys: [reference('fk_job_store', 'store_id', 'store')],
};

const BOOKED_ITEM: TableOptions = {
  name: 'booked_item',
  columns: [
    key(),
    integer('job_id'),
    integer('item_id'),
    varchar('line_key', 60),
    day('from_day'),
    day('to_day'),
    varchar('state', 10),
    instant('reserved_at'),
    optional(instant('handed_out_at')),
    optional(instant('settled_at')),
    optional(varchar('return_remarks', 500)),
    integer('version'),
  ],
  indices: [
    { name: 'ix_booked_item_job', columnNames: ['job_id'] },
    { name: 'ix_booked_item_item_window', columnNames: ['item_id', 'from_day', 'to_day'] },
    { name: 'ix_booked_item_state', columnNames: ['state'] },
  ],
  foreignKeys: [
    reference('fk_booked_item_job', 'job_id', 'job'),
    reference('fk_booked_item_item', 'item_id', 'item'),
  ],
};

const LEDGER: readonly TableOptions[] = [
  {
    name: 'ledger_entry',
    columns: [
      { name: 'number', type: 'integer', isPrimary: true },
      instant('at'),
      optional(integer('actor_id')),
      varchar('actor_name', 120),
      varchar('action', 60),
      varchar('subject_kind', 20),
      varchar('subject_id', 40),
      text('detail'),
      varchar('previous_hash', 64),
      varchar('hash', 64),
    ],
    indices: [{ name: 'ix_ledger_entry_subject', columnNames: ['subject_kind', 'subject_id'] }],
  },
  {
    name: 'ledger_head',
    columns: [{ name: 'id', type: 'integer', isPrimary: true }, integer('number'), varchar('hash', 64)],
  },
  {
    name: 'request_claim',
    columns: [
      textKey('id', 64),
      varchar('request_hash', 64),
      optional(text('answer')),
      instant('claimed_at'),
    ],
    indices: [{ name: 'ix_request_claim_claimed_at', columnNames: ['claimed_at'] }],
  },
];

const IMPORT: readonly TableOptions[] = [
  { name: 'import_mapping', columns: [textKey('signature', 64), text('mapping'), instant('updated_at')] },
  {
    name: 'upload',
    columns: [
      textKey('id', 36),
      integer('person_id'),
      varchar('file_name', 255),
      text('content'),
      instant('created_at'),
    ],
    indices: [{ name: 'ix_upload_created_at', columnNames: ['created_at'] }],
  },
];

const TABLES: readonly TableOptions[] = [
  PERSON,
  SESSION,
  STORE,
  ITEM,
  INSPECTION,
  GEAR_EVENT,
  DEFECT,
  JOB,
  BOOKED_ITEM,
  ...LEDGER,
  ...IMPORT,
];
