import type { DataSource } from 'typeorm';

/** Lets a job that runs by itself run once at a time, however many servers there are. */
export abstract class OneAtATime {
  /** Runs the job and gives what it gives, or undefined at once while another server, or this one, is at it. */
  abstract tryRun<T>(name: string, job: () => Promise<T>): Promise<T | undefined>;
}

/** On the embedded database there is one server: it need only look at itself. */
export class InThisProcess extends OneAtATime {
  private readonly running = new Set<string>();

  override async tryRun<T>(name: string, job: () => Promise<T>): Promise<T | undefined> {
    if (this.running.has(name)) return undefined;
    this.running.add(name);
    try {
      return await job();
    } finally {
      this.running.delete(name);
    }
  }
}

/**
 * Takes an advisory lock on a connection of its own, which PostgreSQL gives back when that connection ends, whatever
 * ended it. Two servers may overlap until a dead one's connection is noticed: the job must bear that.
 */
export class AmongServers extends OneAtATime {
  private readonly here = new InThisProcess();

  constructor(private readonly dataSource: DataSource) {
    super();
  }

  override tryRun<T>(name: string, job: () => Promise<T>): Promise<T | undefined> {
    return this.here.tryRun(name, () => this.amongServers(name, job));
  }

  private async amongServers<T>(name: string, job: () => Promise<T>): Promise<T | undefined> {
    const runner = this.dataSource.createQueryRunner();
    try {
      const [row] = await runner.manager.query<{ taken: boolean }[]>(
        'SELECT pg_try_advisory_lock(hashtext($1)) AS taken',
        [name],
      );
      if (row?.taken !== true) return undefined;
      try {
        return await job();
      } finally {
        await runner.query('SELECT pg_advisory_unlock(hashtext($1))', [name]);
      }
    } finally {
      await runner.release();
    }
  }
}
