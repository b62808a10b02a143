import type { Day } from '../calendar/day.js';
import type { DueReport, InspectionDue } from '../due/due-date.js';
import type { Gear } from '../gear/gear.js';
import type { Refusal } from './refusal.js';

/** Today, and the last day the item must be in date: the later of today and the back day. */
export interface NeededDays {
  readonly today: Day;
  readonly neededThrough: Day;
}

/** Every reason the item's inspections give: one per inspection concerned, each by its own due day. */
export function dateRefusals(gear: Gear, report: DueReport, days: NeededDays): Refusal[] {
  const refusals = report.inspections.flatMap((inspection) => inspectionRefusals(inspection, gear, days));
  for (const { type, on } of report.failed) {
    refusals.push({ code: 'failed_examination', subject: type, on, source: 'common-practice' });
  }
  if (!report.hasRule)
    refusals.push({ code: 'no_rule_for_kind', subject: gear.kind, source: 'common-practice' });
  return refusals;
}

function inspectionRefusals(inspection: InspectionDue, gear: Gear, days: NeededDays): Refusal[] {
  const { type: subject, dueOn, afterEvent, lifts } = inspection;
  const source = inspection.source.key;
  const refusals: Refusal[] = [];
  if (inspection.neverExamined) refusals.push({ code: 'never_examined', subject, source });
  if (dueOn !== undefined && dueOn < days.neededThrough) {
    const code = dueOn < days.today ? 'out_of_date' : 'due_during_job';
    refusals.push({ code, subject, on: dueOn, source });
  }
  if (afterEvent) refusals.push({ code: 'examine_after_event', subject, on: afterEvent.on, source });
  if (lifts?.usedUpOn !== undefined) {
    const figures = { needed: String(lifts.allowed), has: String(lifts.counted), unit: 'lifts' };
    refusals.push({ code: 'lifts_used_up', subject, on: lifts.usedUpOn, ...figures, source });
  }
  if (inspection.certificateRequired && !gear.certificateOnFile) {
    refusals.push({ code: 'certificate_missing', subject, source });
  }
  return refusals;
}
