import type { FieldError } from '../problem.js';
import type { Day } from '../rules/calendar/day.js';
import { requirementsInForce } from '../rules/due/in-force.js';
import type { SchemeDefinition } from '../rules/due/scheme.js';
import type { InspectionType, WrittenScheme } from '../rules/gear/gear.js';
import type { ItemInput } from './item-input.js';

/** The longest interval that can be written for one item: ten years. */
const MOST_MONTHS = 120;

/**
 * Whether the item's own intervals are whole months, one to a type, and name what a competent person drew up
 * where they are longer than the scheme of the store asks.
 */
export function checkWrittenSchemes(
  { writtenSchemes = [], kind }: ItemInput,
  { scheme, today }: { readonly scheme?: SchemeDefinition; readonly today: Day },
): FieldError[] {
  const errors: FieldError[] = [];
  for (const [number, { type, months, reference }] of writtenSchemes.entries()) {
    const at = `writtenSchemes[${number}]`;
    if (writtenSchemes.findIndex((other) => other.type === type) < number) {
      errors.push({ field: `${at}.type`, message: 'has an interval already: write one for each type' });
    }
    if (!Number.isInteger(months) || months < 1 || months > MOST_MONTHS) {
      errors.push({ field: `${at}.months`, message: `write whole months from 1 to ${MOST_MONTHS}` });
      continue;
    }
    const asked = scheme && shortestInterval(scheme, { kind, type, today });
    if (asked !== undefined && months > asked && !isNamed(reference)) {
      const message = `is longer than the ${asked} months asked here: name the scheme of examination that a competent person drew up`;
      errors.push({ field: `${at}.reference`, message });
    }
  }
  return errors;
}

function shortestInterval(
  scheme: SchemeDefinition,
  { kind, type, today }: { kind: string; type: InspectionType; today: Day },
): number | undefined {
  const months = requirementsInForce(scheme, kind, today)
    .filter(({ requirement }) => requirement.type === type)
    .flatMap(({ triggers }) =>
      triggers.flatMap((trigger) => (trigger.when === 'interval' ? [trigger.months] : [])),
    );
  return months.length === 0 ? undefined : Math.min(...months);
}

function isNamed(reference: WrittenScheme['reference']): boolean {
  return (reference ?? '').trim() !== '';
}
