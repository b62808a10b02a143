import { AsyncLocalStorage } from 'node:async_hooks';
import type { DataSource, EntityManager } from 'typeorm';
import { UnitOfWork } from './unit-of-work.js';

/**
 * Writes on SQLite: one job after another on the writer connection.
 *
 * TypeORM hands out the same connection to everyone, so transactions that overlap would nest as savepoints
 * and one job's rollback would swallow another's commit. Hence the queue, and hence the guard: the writer
 * refuses any statement from outside the job that is running now.
 */
export class SqliteUnitOfWork extends UnitOfWork {
  /** No other job runs, so no row is taken. */
  override readonly skippingTaken = '';
  private tail: Promise<unknown> = Promise.resolve();
  private readonly currentJob = new AsyncLocalStorage<{ open: boolean }>();

  constructor(private readonly writer: DataSource) {
    super();
    this.refuseOutsiders();
  }

  protected override runInTransaction<T>(job: (manager: EntityManager) => Promise<T>): Promise<T> {
    const result = this.tail.then(() => this.runAlone(job));
    this.tail = result.catch(() => undefined); // a job that fails must not stop the queue
    return result;
  }

  /** Nothing to lock: the job has the writer to itself. */
  override async lock(): Promise<void> {}

  private async runAlone<T>(job: (manager: EntityManager) => Promise<T>): Promise<T> {
    const turn = { open: true };
    try {
      return await this.currentJob.run(turn, () => this.writer.transaction(job));
    } finally {
      turn.open = false; // a call that the job forgot to await is refused from here on
    }
  }

  private refuseOutsiders(): void {
    const runner = this.writer.createQueryRunner();
    const query = runner.query.bind(runner);
    runner.query = (...[sql, ...rest]: Parameters<typeof query>) => {
      if (!this.currentJob.getStore()?.open) {
        return Promise.reject(new Error('A statement reached the writer from outside a unit of work.'));
      }
      // IMMEDIATE takes the write lock at once: a second process waits instead of failing half-way.
      const statement = sql === 'BEGIN TRANSACTION' ? 'BEGIN IMMEDIATE TRANSACTION' : sql;
      return query(statement, ...rest);
    };
  }
}
