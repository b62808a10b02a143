import type { QueryRunner } from 'typeorm';

/**
 * Makes PostgreSQL sort the keys of items by their code points, as SQLite does, whatever language the database was
 * made for: paging then runs in one order on both engines, and a search for a beginning is a range of the index.
 */
export async function sortKeysBySign(runner: QueryRunner): Promise<void> {
  if (runner.connection.options.type !== 'postgres') return;
  for (const [column, length] of Object.entries({ tag_key: 40, serial_key: 60, maker_key: 80 })) {
    await runner.query(`ALTER TABLE item ALTER COLUMN ${column} TYPE varchar(${length}) COLLATE "C"`);
  }
}
