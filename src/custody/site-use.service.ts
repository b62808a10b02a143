import { Injectable } from '@nestjs/common';
import { Catalogue } from '../catalogue/catalogue.js';
import { Clock } from '../clock.js';
import { jobLines } from '../jobs/job-lines.js';
import { loadJob, type Job } from '../jobs/load-job.js';
import { toDay, type Day } from '../rules/calendar/day.js';
import { Reads } from '../storage/reads.js';
import { bookedItems } from './booked-items.js';
import { Lifts } from './lifts.service.js';
import { dutyOfLines, isInvolved } from './shocks.service.js';
import type { JobLiftsView } from './site-use.dto.js';

/** An item that went out on the job. */
export interface UsedItem {
  readonly itemId: number;
  readonly tag: string;
  readonly lineLabel: string;
  /** Whether a shock is taken to have gone through it unless someone says otherwise. */
  readonly involved: boolean;
}

/** What happened to the gear of a job on site, and what it went out with. */
export interface SiteUseSheet {
  readonly job: Job;
  readonly lifts: JobLiftsView;
  readonly items: readonly UsedItem[];
  readonly isOut: boolean;
  /** The last day of the job that has been; today while any of its gear is still out. */
  readonly lastDay: Day | undefined;
}

/** Gathers what the forms about the use of gear on site show. */
@Injectable()
export class SiteUse {
  constructor(
    private readonly reads: Reads,
    private readonly lifts: Lifts,
    private readonly catalogue: Catalogue,
    private readonly clock: Clock,
  ) {}

  /** @throws Problem `not_found`. */
  async sheet(jobId: number): Promise<SiteUseSheet> {
    const job = await loadJob(this.reads.manager, jobId);
    const rows = (await bookedItems(this.reads.manager, [jobId])).filter(({ state }) => state !== 'reserved');
    const result = jobLines(job, this.catalogue);
    const labels = new Map(result.ok ? result.lines.map(({ key, label }) => [key, label]) : []);
    const duties = dutyOfLines(job, this.catalogue);
    const today = this.clock.today(job.store.timeZone);
    const backDay = toDay(job.backDay);
    const isOut = rows.some(({ state }) => state === 'out');
    return {
      job,
      lifts: await this.lifts.ofJob(jobId),
      items: rows.map(({ itemId, tag, lineKey }) => ({
        itemId,
        tag,
        lineLabel: labels.get(lineKey) ?? lineKey,
        involved: isInvolved({ lineKey }, duties),
      })),
      isOut,
      lastDay: today < job.loadOutDay ? undefined : isOut || today < backDay ? today : backDay,
    };
  }
}
