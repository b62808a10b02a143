import type { Catalogue } from '../catalogue/catalogue.js';
import { windowOf, type Job } from '../jobs/load-job.js';
import type { Day } from '../rules/calendar/day.js';
import type { Gear } from '../rules/gear/gear.js';
import type { GearLine } from '../rules/lines/need.js';
import type { HeldItem, PlanInput } from './job-plan.js';

/** What of a plan comes from the job itself, with the facts that were read for it. */
export interface PlanFacts {
  readonly catalogue: Catalogue;
  readonly lines: readonly GearLine[];
  readonly gear: readonly Gear[];
  readonly held: readonly HeldItem[];
  readonly today: Day;
}

/** The input of a plan for this job as it stands. */
export function planInput(job: Job, { catalogue, ...facts }: PlanFacts): PlanInput {
  return {
    ...facts,
    jobId: job.id,
    storeId: job.storeId,
    window: windowOf(job),
    otherStores: job.otherStores,
    choices: job.choices,
    kinds: catalogue.kinds(),
    scheme: catalogue.scheme(job.scheme),
  };
}
