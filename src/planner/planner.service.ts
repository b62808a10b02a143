import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { Catalogue } from '../catalogue/catalogue.js';
import { Clock } from '../clock.js';
import { requireLines } from '../jobs/job-lines.js';
import { loadJob, type Job } from '../jobs/load-job.js';
import type { Day } from '../rules/calendar/day.js';
import type { RulingPanels } from '../rules/panels/panel-mass.js';
import { Reads } from '../storage/reads.js';
import { GearFacts } from './gear-facts.service.js';
import { heldItems } from '../custody/held-items.js';
import type { JobPlan } from './job-plan.js';
import { planInput } from './plan-input.js';
import { planJob } from './plan-job.js';

/** A plan with the job it was made for. */
export interface Proposal {
  readonly job: Job;
  readonly plan: JobPlan;
  readonly ruling: RulingPanels;
  readonly today: Day;
}

/** Which gear a job should take, why, and what is missing. Keeps nothing: every proposal is made from fresh facts. */
@Injectable()
export class PlannerService {
  constructor(
    private readonly reads: Reads,
    private readonly facts: GearFacts,
    private readonly catalogue: Catalogue,
    private readonly clock: Clock,
  ) {}

  /** @throws Problem `not_found`. */
  async propose(jobId: number): Promise<Proposal> {
    return this.proposeFor(this.reads.manager, await loadJob(this.reads.manager, jobId));
  }

  /** The proposal for a job as handed in, from facts read through `manager`: inside a change, those of the change. */
  async proposeFor(manager: EntityManager, job: Job): Promise<Proposal> {
    const today = this.clock.today(job.store.timeZone);
    const { lines, ruling } = requireLines(job, this.catalogue);
    const kinds = [...new Set(lines.map(({ kind }) => kind))];
    const gear = await this.facts.load(manager, { kinds }, today);
    const held = await heldItems(manager, job.id);
    return {
      job,
      ruling,
      today,
      plan: planJob(planInput(job, { catalogue: this.catalogue, lines, gear, held, today })),
    };
  }
}
