import type { Working } from '../rules/working.js';
import type { JobPlan, PlannedLine } from './job-plan.js';

/** The planner's answer for one job, made from facts as they are now. A planning aid: it replaces no lift plan. */
export class ProposalView {
  jobId!: number;
  jobVersion!: number;
  /** The day it was made on, at the job's store. */
  today!: string;
  /** Each gear line with its working, the items chosen, the items refused with every reason, and remedies where it is short. */
  lines!: PlannedLine[];
  /** The chosen tags by the store they come from. */
  transports!: JobPlan['transports'][number][];
  unmetPins!: JobPlan['unmetPins'][number][];
  /** How the masses of the ruling panels were worked out. */
  massWorkings!: Working[];
}
