import { Table, type MigrationInterface, type QueryRunner } from 'typeorm';
import { sortKeysBySign } from './key-order.js';
import { IMPORT } from './tables/import.js';
import { JOBS } from './tables/jobs.js';
import { LEDGER } from './tables/ledger.js';
import { PEOPLE_AND_STORES } from './tables/people-and-stores.js';
import { REGISTER } from './tables/register.js';
import { appendOnly, noDoubleBooking, undoTriggers } from './triggers.js';

/** Each after the tables it refers to. */
const TABLES = [...PEOPLE_AND_STORES, ...REGISTER, ...JOBS, ...LEDGER, ...IMPORT];

/** The first history: people, stores, the register, inspections, jobs, custody and the ledger. */
export class CreateTackleroom1795564800000 implements MigrationInterface {
  readonly name = 'CreateTackleroom1795564800000';

  async up(runner: QueryRunner): Promise<void> {
    for (const table of TABLES) await runner.createTable(new Table(table));
    await runner.query(
      `INSERT INTO ledger_head (id, number, hash) VALUES (1, 0, '0000000000000000000000000000000000000000000000000000000000000000')`,
    );
    for (const table of ['ledger_entry', 'inspection', 'gear_event']) await appendOnly(runner, table);
    await noDoubleBooking(runner);
    await sortKeysBySign(runner);
  }

  async down(runner: QueryRunner): Promise<void> {
    await undoTriggers(runner);
    for (const table of [...TABLES].reverse()) await runner.dropTable(table.name, false);
  }
}
