import { addMonths, earliest, type Day } from '../calendar/day.js';
import { dueDates } from '../due/due-date.js';
import type { SchemeDefinition } from '../due/scheme.js';
import type { Gear, InspectionRecord } from '../gear/gear.js';
import type { Working } from '../working.js';
import type { DraftDefect } from './draft.js';
import type { Occasion } from './report.js';

/** What the next day is counted from. */
export interface ExaminationToCount {
  readonly examinedOn: Day;
  readonly occasion?: Occasion | undefined;
  readonly defects: readonly DraftDefect[];
}

/** The latest next day, and how each rule came to its own, the earliest first. */
export interface NextExamination {
  readonly latest?: Day;
  readonly workings: readonly Working[];
}

/** The interval that an occasion names by itself: LOLER 1998 Schedule 1 paragraph 7(a), regulation 9(3)(a). */
const MONTHS_NAMED: Readonly<Partial<Record<Occasion, number>>> = { sixMonths: 6, twelveMonths: 12 };

/**
 * The latest day for the next thorough examination: what the scheme of the store and the item's own written scheme
 * give from the day of this one, the interval that the examiner named, and the first day by which a defect could
 * become a danger, whichever is earliest. `gear` holds the deadline of defects that stay open beside this report; one
 * that has passed already keeps the item out of use by itself and caps nothing.
 */
export function nextExamination(
  gear: Gear,
  scheme: SchemeDefinition,
  { examination, today }: { examination: ExaminationToCount; today: Day },
): NextExamination {
  const { examinedOn, occasion, defects } = examination;
  const passed: InspectionRecord = { type: 'thoroughExamination', doneOn: examinedOn, outcome: 'fit' };
  const after = dueDates({ ...gear, inspections: [passed], events: [], lifts: [] }, scheme, today);
  const byScheme = after.inspections.filter(({ type }) => type === 'thoroughExamination');
  const months = occasion === undefined ? undefined : MONTHS_NAMED[occasion];
  const deadlines = [...defects.map(({ by }) => by), gear.defectDeadline].flatMap((on) =>
    on !== undefined && on > examinedOn ? [on] : [],
  );
  const latest = earliest([
    ...byScheme.flatMap(({ dueOn }) => (dueOn === undefined ? [] : [dueOn])),
    ...(months === undefined ? [] : [addMonths(examinedOn, months)]),
    ...deadlines,
  ]);
  const workings = [
    ...byScheme.flatMap((due) => due.workings.filter(({ result }) => result.name === 'due')),
    ...(months === undefined ? [] : [namedInterval(examinedOn, months)]),
    ...deadlines.map(defectDeadline),
  ].sort((a, b) => (a.result.value < b.result.value ? -1 : a.result.value > b.result.value ? 1 : 0));
  return { ...(latest === undefined ? {} : { latest }), workings };
}

function namedInterval(examinedOn: Day, months: number): Working {
  return {
    title: 'Due by the interval named',
    formula: 'this examination + interval, clamped to the end of the month',
    inputs: [
      { name: 'this examination', value: examinedOn, unit: '' },
      { name: 'interval', value: String(months), unit: 'months' },
    ],
    result: { name: 'due', value: addMonths(examinedOn, months), unit: '' },
    source: 'loler-1998',
  };
}

function defectDeadline(by: Day): Working {
  return {
    title: 'Capped by a defect',
    formula: 'due = last day before the defect could become a danger',
    inputs: [{ name: 'could become a danger by', value: by, unit: '' }],
    result: { name: 'due', value: by, unit: '' },
    source: 'loler-1998',
  };
}
