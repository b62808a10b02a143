import type { MigrationInterface, QueryRunner } from 'typeorm';
import { lookAlikeKey } from '../src/rules/text/look-alike.js';

const ROWS_AT_A_TIME = 500;

/** The key under which tags that are easily misread for each other meet, so that a look-up reads no other tag. */
export class TagLookAlikes1795626000000 implements MigrationInterface {
  readonly name = 'TagLookAlikes1795626000000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`ALTER TABLE item ADD COLUMN tag_look_alike_key varchar(40) NOT NULL DEFAULT ''`);
    for (let after = 0, some = await tagsAfter(runner, after); some.length > 0;) {
      for (const { id, tag } of some) await writeKey(runner, { id, key: lookAlikeKey(tag) });
      after = some.at(-1)?.id ?? after;
      some = await tagsAfter(runner, after);
    }
    await runner.query('CREATE INDEX ix_item_tag_look_alike_key ON item (tag_look_alike_key)');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP INDEX ix_item_tag_look_alike_key');
    await runner.query('ALTER TABLE item DROP COLUMN tag_look_alike_key');
  }
}

function tagsAfter(runner: QueryRunner, after: number): Promise<{ id: number; tag: string }[]> {
  const sql = `SELECT id, tag FROM item WHERE id > $1 ORDER BY id LIMIT ${ROWS_AT_A_TIME}`;
  return runner.query(sql, [after]);
}

async function writeKey(runner: QueryRunner, { id, key }: { id: number; key: string }): Promise<void> {
  await runner.query('UPDATE item SET tag_look_alike_key = $1 WHERE id = $2', [key, id]);
}
