import { toDay, type Day } from '../../src/rules/calendar/day.js';
import type { InspectionRequirement, SchemeDefinition, Trigger } from '../../src/rules/due/scheme.js';
import type { FitnessContext } from '../../src/rules/fitness/fitness.js';
import type { Gear, InspectionRecord } from '../../src/rules/gear/gear.js';
import type { Citation } from '../../src/rules/citation.js';
import type { KindDefinition } from '../../src/rules/gear/kind.js';
import type { GearLine } from '../../src/rules/lines/need.js';

/** The day these examples are looked at from. */
export const TODAY = toDay('2026-06-10');

/** A day in short, for tests. */
export function day(text: string): Day {
  return toDay(text);
}

const SOURCE: Citation = { key: 'loler-1998', clause: 'reg 9' };

/** An accessory for lifting, every 6 months and before first use unless declared in the last 12: LOLER 1998 reg 9(1), 9(3)(a). */
export const ACCESSORY_TRIGGERS: readonly Trigger[] = [
  { when: 'interval', months: 6 },
  { when: 'firstUse', declarationMonths: 12 },
  { when: 'afterEvent', events: ['dropped', 'overloaded', 'altered', 'repaired'] },
];

/** A requirement for the example kind, in force since 1998 unless said otherwise. */
export function requirement(
  triggers: readonly Trigger[] | null,
  changes: Partial<InspectionRequirement> = {},
): InspectionRequirement {
  return {
    id: 'example.thorough-examination',
    kinds: ['sling'],
    type: 'thoroughExamination',
    who: 'competentPerson',
    certificateRequired: true,
    entries: [{ validFrom: day('1998-12-05'), triggers, source: SOURCE, checkedOn: day('2026-01-01') }],
    ...changes,
  };
}

/** A scheme of the requirements given; the accessory rule of LOLER when none are. */
export function scheme(
  inspections: readonly InspectionRequirement[] = [requirement(ACCESSORY_TRIGGERS)],
): SchemeDefinition {
  return { scheme: 'example', name: 'Example', caution: 'An example', inspections };
}

/** A sling rated in kilograms, fit for everything the examples ask. */
export function gear(changes: Partial<Gear> = {}): Gear {
  return {
    itemId: 1,
    tag: 'SL-014',
    kind: 'sling',
    storeId: 1,
    storeName: 'North',
    condition: 'inService',
    missing: false,
    serialKnown: true,
    labelLegible: true,
    certificateOnFile: true,
    markings: [{ measure: 'workingLoadLimit', value: '2', unit: 't' }],
    dimensions: { lengthM: '4', jawMaximumMm: '120', forkWidthMm: '100' },
    manufacturedOn: day('2024-06-10'),
    firstUsedOn: day('2024-07-01'),
    inspections: [{ type: 'thoroughExamination', doneOn: day('2026-03-01'), outcome: 'fit' }],
    events: [],
    writtenSchemes: [],
    commitments: [],
    ...changes,
  };
}

/** The kind of the example gear. */
export function kind(changes: Partial<KindDefinition> = {}): KindDefinition {
  return {
    kind: 'sling',
    name: 'Sling',
    plural: 'Slings',
    tagPrefix: 'SL',
    alsoCalled: [],
    duties: ['lifting'],
    rating: { measure: 'workingLoadLimit', units: ['kg', 't', 'lb', 'kN'], required: true, source: SOURCE },
    dimensions: [],
    checklist: [],
    cautions: [],
    ...changes,
  };
}

/** A need for one ton and a half. */
export function line(changes: Partial<GearLine> = {}): GearLine {
  return {
    key: 'slings',
    label: 'Slings',
    kind: 'sling',
    duty: 'lifting',
    quantity: 1,
    rating: { measure: 'workingLoadLimit', value: '1500', unit: 'kg' },
    dimensions: [],
    workings: [],
    ...changes,
  };
}

/** Looked at today for three days in June. */
export function context(changes: Partial<FitnessContext> = {}): FitnessContext {
  return {
    kind: kind(),
    scheme: scheme(),
    window: { from: day('2026-06-15'), to: day('2026-06-17') },
    today: TODAY,
    ...changes,
  };
}

/** A thorough examination passed on that day. */
export function examined(doneOn: string, changes: Partial<InspectionRecord> = {}): InspectionRecord {
  return { type: 'thoroughExamination', doneOn: day(doneOn), outcome: 'fit', ...changes };
}

/** An interval of so many months. */
export function every(months: number): Trigger {
  return { when: 'interval', months };
}

/** The whole but for one property, which is then absent and not just undefined. */
export function without<Whole extends object, Key extends keyof Whole>(
  whole: Whole,
  key: Key,
): Omit<Whole, Key> {
  const { [key]: left, ...rest } = whole;
  void left;
  return rest;
}
