import type { Day } from '../calendar/day.js';
import type { Citation } from '../citation.js';
import type { InspectionRequirement, SchemeDefinition, Trigger } from './scheme.js';

/** A requirement as it stands on one day. */
export interface RequirementInForce {
  readonly requirement: InspectionRequirement;
  readonly triggers: readonly Trigger[];
  readonly source: Citation;
}

/**
 * What the scheme asks of a kind on a day, pre-use checks included. Of each requirement the latest entry that is
 * already valid counts; a requirement not yet valid, or withdrawn by then, is left out.
 */
export function requirementsInForce(scheme: SchemeDefinition, kind: string, on: Day): RequirementInForce[] {
  return scheme.inspections
    .filter((requirement) => requirement.kinds.includes(kind))
    .flatMap((requirement) => {
      const entry = requirement.entries.filter(({ validFrom }) => validFrom <= on).at(-1);
      if (!entry?.triggers) return [];
      return [{ requirement, triggers: entry.triggers, source: entry.source }];
    });
}
