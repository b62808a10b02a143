import type { MigrationInterface, QueryRunner } from 'typeorm';
import { onPostgres } from './triggers.js';

/** What was reported. Only who closed it is added later. */
const REPORTED = [
  'id',
  'item_id',
  'severity',
  'description',
  'kind',
  'figures',
  'last_day_of_use',
  'reported_by',
  'recorded_at',
];

/** True of every update but the one that closes an open defect. */
const ALTERED = [
  'OLD.closed_by_inspection_id IS NOT NULL',
  'NEW.closed_by_inspection_id IS NULL',
  ...REPORTED.map((column) => `NEW.${column} IS DISTINCT FROM OLD.${column}`),
].join(' OR ');

/** A defect is closed once, by an examination. Nothing else of it changes, and it is never deleted. */
export class DefectsStand1795633200000 implements MigrationInterface {
  readonly name = 'DefectsStand1795633200000';

  async up(runner: QueryRunner): Promise<void> {
    for (const trigger of onPostgres(runner) ? ON_POSTGRES : ON_SQLITE)
      await runner.query(`CREATE TRIGGER ${trigger}`);
  }

  async down(runner: QueryRunner): Promise<void> {
    const table = onPostgres(runner) ? ' ON defect' : '';
    for (const trigger of ['defect_stands_update', 'defect_stands_delete'])
      await runner.query(`DROP TRIGGER ${trigger}${table}`);
  }
}

const ON_POSTGRES = [
  `defect_stands_update BEFORE UPDATE ON defect FOR EACH ROW WHEN (${ALTERED}) EXECUTE FUNCTION refuse_change()`,
  'defect_stands_delete BEFORE DELETE OR TRUNCATE ON defect FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()',
];

const ON_SQLITE = [
  `defect_stands_update BEFORE UPDATE ON defect WHEN ${ALTERED} BEGIN SELECT RAISE(ABORT, 'append_only'); END`,
  `defect_stands_delete BEFORE DELETE ON defect BEGIN SELECT RAISE(ABORT, 'append_only'); END`,
];
