import type { TableOptions } from 'typeorm';
import { key, varchar, integer, boolean, day, text, instant, optional, reference } from './columns.js';

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

/** Jobs, and the gear promised to them. */
export const JOBS: readonly TableOptions[] = [JOB, BOOKED_ITEM];
