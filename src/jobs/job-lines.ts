import type { Catalogue } from '../catalogue/catalogue.js';
import { badInput } from '../http/input.js';
import { gearLines, type GearLinesResult } from '../rules/lines/gear-lines.js';
import type { WantedDimension } from '../rules/lines/line-change.js';
import type { JobEntity } from './job.entity.js';
import { linesProblemAsFieldError } from './line-problem-words.js';

/** What of a job decides its gear lines. */
export type LineFacts = Pick<
  JobEntity,
  'method' | 'panels' | 'counts' | 'parameters' | 'adjustments' | 'addedLines'
>;

/** The gear lines of a job, or what keeps them from being worked out. */
export function jobLines(job: LineFacts, catalogue: Catalogue): GearLinesResult {
  const { liftersInUse, ...counts } = job.counts;
  return gearLines({
    method: catalogue.method(job.method),
    kinds: catalogue.kinds(),
    panels: job.panels,
    counts: { ...counts, lifters: liftersInUse },
    stated: job.parameters,
    adjustments: job.adjustments.map(({ lengthM, ...rest }) => ({ ...rest, ...wantedLength(lengthM) })),
    added: job.addedLines.map(({ lineKey, lengthM, ...rest }) => ({
      ...rest,
      key: lineKey,
      ...wantedLength(lengthM),
    })),
  });
}

/**
 * The gear lines of a job that must have them.
 * @throws Problem `bad_input` that names everything in the way, which a stored job has only after the catalogue changed.
 */
export function requireLines(job: LineFacts, catalogue: Catalogue): Extract<GearLinesResult, { ok: true }> {
  const result = jobLines(job, catalogue);
  if (!result.ok) throw badInput(result.problems.map((problem) => linesProblemAsFieldError(problem, job)));
  return result;
}

function wantedLength(lengthM: string | undefined): { readonly dimensions?: readonly WantedDimension[] } {
  return lengthM === undefined
    ? {}
    : { dimensions: [{ dimension: 'lengthM', rule: 'atLeast', value: lengthM }] };
}
