import { Injectable } from '@nestjs/common';
import { Catalogue } from '../catalogue/catalogue.js';
import { requireLines } from '../jobs/job-lines.js';
import { loadJob, type Job } from '../jobs/load-job.js';
import type { MethodDefinition } from '../rules/lines/method.js';
import { Reads } from '../storage/reads.js';
import type { BookingView } from './booking.dto.js';
import { BookingFlags } from './flags.service.js';

/** What the pages at the store's counter show. */
export interface CounterSheet {
  readonly job: Job;
  readonly booking: BookingView;
  /** The labels of the gear lines by key. */
  readonly labels: ReadonlyMap<string, string>;
  /** What the crew confirms with its own eyes before the gear goes out. */
  readonly confirmations: MethodDefinition['confirmations'];
}

/** Gathers what the pages at the store's counter show. */
@Injectable()
export class Counter {
  constructor(
    private readonly reads: Reads,
    private readonly flags: BookingFlags,
    private readonly catalogue: Catalogue,
  ) {}

  /** @throws Problem `not_found`. */
  async sheet(jobId: number): Promise<CounterSheet> {
    const job = await loadJob(this.reads.manager, jobId);
    const { lines } = requireLines(job, this.catalogue);
    const labels = new Map(lines.map(({ key, label }) => [key, label]));
    const { confirmations } = this.catalogue.method(job.method);
    return { job, booking: await this.flags.booking(jobId), labels, confirmations };
  }
}
