import type { TableOptions } from 'typeorm';
import { key, textKey, varchar, integer, boolean, text, instant, reference } from './columns.js';

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

/** Who may do what, and where the gear hangs. */
export const PEOPLE_AND_STORES: readonly TableOptions[] = [PERSON, SESSION, STORE];
