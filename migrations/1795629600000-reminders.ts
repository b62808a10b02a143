import { Table, type MigrationInterface, type QueryRunner, type TableOptions } from 'typeorm';
import { day, instant, integer, key, optional, reference, text, varchar, boolean } from './tables/columns.js';
import { markDueStale, undoMarkDueStale } from './due-stale-triggers.js';

/** A primary key that is the number of a row of another table. */
const keyOf = (name: string) => ({ ...integer(name), isPrimary: true });

/** The earliest day on which anything of an item in service falls due, so that what is due is found without the rest. */
const DUE_DAY: TableOptions = {
  name: 'due_day',
  columns: [keyOf('item_id'), integer('store_id'), day('due_on')],
  indices: [{ name: 'ix_due_day_store', columnNames: ['store_id', 'due_on'] }],
  foreignKeys: [
    reference('fk_due_day_item', 'item_id', 'item'),
    reference('fk_due_day_store', 'store_id', 'store'),
  ],
};

/** Items whose due day has to be worked out again; written by the triggers of the tables that it comes from. */
const DUE_STALE: TableOptions = { name: 'due_stale', columns: [key(), integer('item_id')] };

/** What each scheme asked when the due days were worked out last. */
const DUE_SCHEME: TableOptions = {
  name: 'due_scheme',
  columns: [{ ...varchar('scheme', 20), isPrimary: true }, varchar('fingerprint', 64)],
};

/** When a store works, how early it wants to hear, and at what time of its day. */
const REMINDER_RULE: TableOptions = {
  name: 'reminder_rule',
  columns: [
    keyOf('store_id'),
    text('work_days'),
    text('holidays'),
    text('lead_days'),
    varchar('digest_time', 5),
    integer('version'),
  ],
  foreignKeys: [reference('fk_reminder_rule_store', 'store_id', 'store')],
};

/** Where a person gets mail, and how much of it. */
const MAIL_CHOICE: TableOptions = {
  name: 'mail_choice',
  columns: [
    keyOf('person_id'),
    optional(varchar('address', 254)),
    varchar('digest', 20),
    boolean('urgent'),
    optional(text('store_ids')),
    integer('version'),
  ],
  foreignKeys: [reference('fk_mail_choice_person', 'person_id', 'person')],
};

/** Mail that was decided on: to one person, with the Message-ID that it keeps however often it is tried. */
const MAIL: TableOptions = {
  name: 'mail',
  columns: [
    key(),
    varchar('kind', 20),
    varchar('subject_key', 80),
    integer('person_id'),
    varchar('to_name', 120),
    varchar('to_address', 254),
    varchar('subject', 200),
    text('plain_text'),
    text('html'),
    varchar('message_id', 300),
    instant('decided_at'),
    varchar('state', 10),
    integer('tries'),
    instant('next_try_at'),
    instant('give_up_at'),
    optional(instant('claimed_until')),
    optional(varchar('claimed_by', 40)),
    optional(instant('settled_at')),
    optional(varchar('fault', 20)),
    optional(varchar('last_answer', 500)),
  ],
  uniques: [
    { name: 'uq_mail_subject_key', columnNames: ['subject_key'] },
    { name: 'uq_mail_message_id', columnNames: ['message_id'] },
  ],
  indices: [
    { name: 'ix_mail_state', columnNames: ['state', 'next_try_at'] },
    { name: 'ix_mail_person', columnNames: ['person_id', 'kind'] },
  ],
  foreignKeys: [reference('fk_mail_person', 'person_id', 'person')],
};

/** The days on which it was decided what a person is told, whether or not there was anything to say. */
const DIGEST_RUN: TableOptions = {
  name: 'digest_run',
  columns: [
    key(),
    integer('person_id'),
    day('on_day'),
    instant('decided_at'),
    text('told'),
    optional(integer('mail_id')),
  ],
  uniques: [{ name: 'uq_digest_run_person_id_on_day', columnNames: ['person_id', 'on_day'] }],
  foreignKeys: [
    reference('fk_digest_run_person', 'person_id', 'person'),
    reference('fk_digest_run_mail', 'mail_id', 'mail'),
  ],
};

/** Booked gear that was unfit when it was looked at last: what was told of it is not told twice. */
const TOLD_FLAG: TableOptions = {
  name: 'told_flag',
  columns: [key(), integer('job_id'), integer('item_id'), varchar('codes', 400), instant('told_at')],
  uniques: [{ name: 'uq_told_flag_job_id_item_id', columnNames: ['job_id', 'item_id'] }],
  foreignKeys: [
    reference('fk_told_flag_job', 'job_id', 'job'),
    reference('fk_told_flag_item', 'item_id', 'item'),
  ],
};

/** A secret address that a calendar program reads: of a store, or of what its owner is told. */
const CALENDAR_FEED: TableOptions = {
  name: 'calendar_feed',
  columns: [
    key(),
    varchar('secret_hash', 64),
    integer('person_id'),
    optional(integer('store_id')),
    instant('created_at'),
    optional(instant('revoked_at')),
  ],
  uniques: [{ name: 'uq_calendar_feed_secret_hash', columnNames: ['secret_hash'] }],
  indices: [{ name: 'ix_calendar_feed_person', columnNames: ['person_id'] }],
  foreignKeys: [
    reference('fk_calendar_feed_person', 'person_id', 'person'),
    reference('fk_calendar_feed_store', 'store_id', 'store'),
  ],
};

/** How often what falls due at a store on a day has changed: the sequence number of its calendar event. */
const CALENDAR_DAY: TableOptions = {
  name: 'calendar_day',
  columns: [key(), integer('store_id'), day('on_day'), integer('sequence'), instant('changed_at')],
  uniques: [{ name: 'uq_calendar_day_store_day', columnNames: ['store_id', 'on_day'] }],
  foreignKeys: [reference('fk_calendar_day_store', 'store_id', 'store')],
};

/** Each after the tables it refers to. */
const TABLES = [
  DUE_DAY,
  DUE_STALE,
  DUE_SCHEME,
  REMINDER_RULE,
  MAIL_CHOICE,
  MAIL,
  DIGEST_RUN,
  TOLD_FLAG,
  CALENDAR_FEED,
  CALENDAR_DAY,
];

/** Due days found by index, who is told what and when, mail on its way, and calendar feeds. */
export class Reminders1795629600000 implements MigrationInterface {
  readonly name = 'Reminders1795629600000';

  async up(runner: QueryRunner): Promise<void> {
    for (const table of TABLES) await runner.createTable(new Table(table));
    await runner.query('ALTER TABLE notice ADD COLUMN mailed_at varchar(24)');
    // What was raised before there was mail stands on the start page; telling it now would be old news.
    await runner.query('UPDATE notice SET mailed_at = raised_at');
    await runner.query('INSERT INTO due_stale (item_id) SELECT id FROM item');
    await markDueStale(runner);
  }

  async down(runner: QueryRunner): Promise<void> {
    await undoMarkDueStale(runner);
    await runner.query('ALTER TABLE notice DROP COLUMN mailed_at');
    for (const { name } of [...TABLES].reverse()) await runner.dropTable(name, false);
  }
}
