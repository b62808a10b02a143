import type { Day } from '../../rules/calendar/day.js';
import { requirementsInForce } from '../../rules/due/in-force.js';
import type { SchemeDefinition } from '../../rules/due/scheme.js';
import type { InspectionType } from '../../rules/gear/gear.js';

/** The most thorough first. */
const EXAMINATIONS = ['thoroughExamination', 'interimInspection', 'proofLoadTest'] as const;

/** What a list means by 'last examined': the most thorough type that the place asks for at intervals of the kind, if any. */
export function examiningType(
  scheme: SchemeDefinition,
  kind: string,
  today: Day,
): InspectionType | undefined {
  const types = requirementsInForce(scheme, kind, today)
    .filter(({ triggers }) => triggers.some(({ when }) => when === 'interval'))
    .map(({ requirement }) => requirement.type);
  return EXAMINATIONS.find((known) => types.includes(known));
}
