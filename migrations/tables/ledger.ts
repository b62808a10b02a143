import type { TableOptions } from 'typeorm';
import { textKey, varchar, integer, text, instant, optional } from './columns.js';

/** The history, its newest entry, and requests that took effect. */
export const LEDGER: readonly TableOptions[] = [
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
