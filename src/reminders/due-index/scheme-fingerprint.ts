import { createHash } from 'node:crypto';
import type { Day } from '../../rules/calendar/day.js';
import { requirementsInForce } from '../../rules/due/in-force.js';
import type { SchemeDefinition } from '../../rules/due/scheme.js';
import { canonicalJson } from '../../ledger/canonical-json.js';

/**
 * A fingerprint of all that a scheme asks on some days: SHA-256 in hexadecimal. Stores that go by one scheme may
 * live on different days for some hours; where both days ask the same, the fingerprint is that of one.
 */
export function schemeFingerprint(scheme: SchemeDefinition, days: readonly Day[]): string {
  const asked = days.map((day) => canonicalJson(inForce(scheme, day)));
  return createHash('sha256')
    .update(canonicalJson([...new Set(asked)].sort()))
    .digest('hex');
}

function inForce(scheme: SchemeDefinition, day: Day): object[] {
  const kinds = [...new Set(scheme.inspections.flatMap((requirement) => requirement.kinds))].sort();
  return kinds.flatMap((kind) =>
    requirementsInForce(scheme, kind, day).map(({ requirement: { id, type }, triggers }) => ({
      kind,
      id,
      type,
      triggers,
    })),
  );
}
