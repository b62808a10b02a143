import type { TableOptions } from 'typeorm';
import { key, varchar, integer, boolean, day, text, instant, optional, reference } from './columns.js';

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

/** The gear, and all that was found out about it. */
export const REGISTER: readonly TableOptions[] = [ITEM, INSPECTION, GEAR_EVENT, DEFECT];
