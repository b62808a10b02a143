import type { TableOptions } from 'typeorm';
import { textKey, varchar, integer, text, instant } from './columns.js';

/** The working papers of an import. */
export const IMPORT: readonly TableOptions[] = [
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
