import { AsyncLocalStorage } from 'node:async_hooks';
import type { EntityManager } from 'typeorm';

/**
 * The one way to write. A job runs in a transaction of its own, and the promise settles only after COMMIT
 * or ROLLBACK. No network inside a job, and no `run` inside another: pass the manager down instead.
 */
export abstract class UnitOfWork {
  private readonly insideJob = new AsyncLocalStorage<true>();

  /**
   * Runs `job` in a transaction and gives what it gives.
   * @throws Error when called from inside a job; else whatever the job threw, with nothing written.
   */
  async run<T>(job: (manager: EntityManager) => Promise<T>): Promise<T> {
    if (this.insideJob.getStore()) {
      throw new Error('UnitOfWork.run was called inside a job: pass the manager down instead.');
    }
    return this.runInTransaction((manager) => this.insideJob.run(true, () => job(manager)));
  }

  protected abstract runInTransaction<T>(job: (manager: EntityManager) => Promise<T>): Promise<T>;

  /**
   * Locks rows of a table until the job ends, in the order of their ids, so that two jobs that want
   * the same rows wait for each other and never deadlock.
   */
  abstract lock(manager: EntityManager, table: string, ids: readonly number[]): Promise<void>;

  /** What ends a SELECT so that it takes rows for this job and leaves out those that another job has taken. */
  abstract readonly skippingTaken: string;
}
