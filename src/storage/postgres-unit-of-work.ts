import type { DataSource, EntityManager } from 'typeorm';
import { isWorthRetrying } from './engine-errors.js';
import { UnitOfWork } from './unit-of-work.js';

const MOST_TRIES = 5;

/** Writes on PostgreSQL: real transactions with row locks. A deadlock or a serialisation failure is tried again, a few times. */
export class PostgresUnitOfWork extends UnitOfWork {
  override readonly skippingTaken = ' FOR UPDATE SKIP LOCKED';

  constructor(private readonly dataSource: DataSource) {
    super();
  }

  protected override async runInTransaction<T>(job: (manager: EntityManager) => Promise<T>): Promise<T> {
    for (let tries = 1; ; tries += 1) {
      try {
        return await this.dataSource.transaction('READ COMMITTED', job);
      } catch (error) {
        if (tries >= MOST_TRIES || !isWorthRetrying(error)) throw error;
        await pause(tries * 10 + Math.random() * 20);
      }
    }
  }

  override async lock(manager: EntityManager, table: string, ids: readonly number[]): Promise<void> {
    if (ids.length === 0) return;
    await manager.query(`SELECT id FROM "${table}" WHERE id = ANY($1) ORDER BY id FOR UPDATE`, [ids]);
  }
}

function pause(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}
