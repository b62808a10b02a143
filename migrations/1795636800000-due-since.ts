import type { MigrationInterface, QueryRunner } from 'typeorm';

/** When a due day was found: empty for what the index said before, which is known since ever. */
export class DueSince1795636800000 implements MigrationInterface {
  readonly name = 'DueSince1795636800000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE due_day ADD COLUMN since varchar(24)');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE due_day DROP COLUMN since');
  }
}
