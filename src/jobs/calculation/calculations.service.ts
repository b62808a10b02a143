import { Injectable } from '@nestjs/common';
import { Catalogue } from '../../catalogue/catalogue.js';
import { Problem } from '../../problem.js';
import type { MethodDefinition } from '../../rules/lines/method.js';
import type { Programme } from '../../rules/programme/programme-figures.js';
import { Reads } from '../../storage/reads.js';
import { loadJob, type Job } from '../load-job.js';
import { calculationSheet, type CalculationSheet } from './calculation-sheet.js';
import { keptSheets, readKept, type KeptSheet } from './kept-sheets.js';

/** The arithmetic of a job as it stands, and the sheets that were kept with its booking. */
export interface JobCalculation {
  readonly job: Job;
  readonly method: MethodDefinition;
  readonly sheet: CalculationSheet;
  readonly programme?: Programme;
  readonly kept: readonly KeptSheet[];
}

/** Works out the calculation of a job, and finds the ones that were kept. */
@Injectable()
export class Calculations {
  constructor(
    private readonly reads: Reads,
    private readonly catalogue: Catalogue,
  ) {}

  /** @throws Problem `not_found`. */
  async current(jobId: number): Promise<JobCalculation> {
    const job = await loadJob(this.reads.manager, jobId);
    const kept = await keptSheets(this.reads.manager, jobId);
    const method = this.catalogue.method(job.method);
    return { job, method, kept, ...calculationSheet(job, this.catalogue) };
  }

  /** The sheet as it stood when gear was reserved. @throws Problem `not_found`. */
  async kept(
    jobId: number,
    sheetId: number,
  ): Promise<{ job: Job; keptAt: string; fingerprint: string; sheet: CalculationSheet }> {
    const job = await loadJob(this.reads.manager, jobId);
    const kept = await readKept(this.reads.manager, jobId, sheetId);
    if (!kept)
      throw new Problem(
        'not_found',
        `Job ${job.reference} has no kept calculation with the number ${sheetId}.`,
      );
    return { keptAt: kept.keptAt, fingerprint: kept.fingerprint, sheet: kept.sheet, job };
  }
}
