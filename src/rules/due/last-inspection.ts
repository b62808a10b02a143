import type { Day } from '../calendar/day.js';
import type { Gear, InspectionRecord, InspectionType } from '../gear/gear.js';

/** The types whose record meets a need for `type`: a thorough examination does all that an interim inspection does. */
const MET_BY: Readonly<Record<InspectionType, readonly InspectionType[]>> = {
  preUseCheck: ['preUseCheck'],
  interimInspection: ['interimInspection', 'thoroughExamination'],
  thoroughExamination: ['thoroughExamination'],
  proofLoadTest: ['proofLoadTest'],
};

/** Inspections that come from a person who answers for them; a failed pre-use check works through quarantine. */
const EXAMINATIONS = ['interimInspection', 'thoroughExamination', 'proofLoadTest'] as const;

/** An examination the item did not pass and has not passed since. */
export interface FailedExamination {
  readonly type: InspectionType;
  readonly on: Day;
}

/**
 * The last record that meets a need for `type`, up to and including `today`; a record dated later cannot be true
 * and is ignored. On one day a thorough examination outranks an interim inspection, and 'unfit' outranks 'fit'.
 */
export function lastInspection(
  { inspections }: Pick<Gear, 'inspections'>,
  type: InspectionType,
  today: Day,
): InspectionRecord | undefined {
  return inspections
    .filter((record) => MET_BY[type].includes(record.type) && record.doneOn <= today)
    .reduce<InspectionRecord | undefined>(
      (last, record) => (last === undefined || outranks(record, last) ? record : last),
      undefined,
    );
}

/** The last record that meets a need for `type` with the outcome 'fit', whatever was found since. */
export function lastPassed(gear: Gear, type: InspectionType, today: Day): InspectionRecord | undefined {
  const inspections = gear.inspections.filter(({ outcome }) => outcome === 'fit');
  return lastInspection({ inspections }, type, today);
}

function outranks(record: InspectionRecord, other: InspectionRecord): boolean {
  if (record.doneOn !== other.doneOn) return record.doneOn > other.doneOn;
  if (record.type !== other.type) return record.type === 'thoroughExamination';
  return record.outcome === 'unfit';
}

/** Every type of examination whose last record is 'unfit', whether or not the scheme asks for that type. */
export function failedExaminations(gear: Gear, today: Day): FailedExamination[] {
  return EXAMINATIONS.flatMap((type) => {
    const last = lastInspection(gear, type, today);
    return last?.type === type && last.outcome === 'unfit' ? [{ type, on: last.doneOn }] : [];
  });
}
