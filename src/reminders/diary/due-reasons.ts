import type { Day } from '../../rules/calendar/day.js';
import type { InspectionDue } from '../../rules/due/due-date.js';
import type { SchemeDefinition } from '../../rules/due/scheme.js';
import type { Gear, InspectionType } from '../../rules/gear/gear.js';
import type { DueItem } from '../due-index/due-facts.service.js';
import type { DiaryEntry, DueReason } from './diary-entry.js';

/** Everything that makes an item due up to and with a day, and who may do all of it. */
export function dueReasons(
  { gear, report, scheme }: Pick<DueItem, 'gear' | 'report' | 'scheme'>,
  through: Day,
): Pick<DiaryEntry, 'reasons' | 'who'> {
  const due: { reason: DueReason; who: DiaryEntry['who'] }[] = [];
  for (const inspection of report.inspections) {
    const who = whoMayDo(scheme, inspection.requirementId);
    for (const reason of reasonsOf(inspection, through)) due.push({ reason, who });
  }
  for (const { type, on } of report.failed)
    due.push({ reason: { why: 'failed', type, dueOn: on }, who: whoExamines(scheme, gear, type) });
  const { defectDeadline } = report;
  if (defectDeadline !== undefined && defectDeadline <= through)
    due.push({ reason: { why: 'defectDeadline', dueOn: defectDeadline }, who: 'competentPerson' });
  return {
    reasons: due.map(({ reason }) => reason),
    who: due.some(({ who }) => who === 'competentPerson') ? 'competentPerson' : 'inspector',
  };
}

function reasonsOf(inspection: InspectionDue, through: Day): DueReason[] {
  const { type, source, neverExamined, afterEvent, lifts, dueOn } = inspection;
  const reasons: DueReason[] = [];
  if (neverExamined) reasons.push({ why: 'neverExamined', type, source: source.key });
  if (afterEvent !== undefined)
    reasons.push({ why: 'event', type, event: afterEvent.type, dueOn: afterEvent.on });
  if (lifts?.usedUpOn !== undefined) reasons.push({ why: 'liftsUsed', type, dueOn: lifts.usedUpOn });
  if (dueOn !== undefined && dueOn <= through)
    reasons.push({ why: 'inspection', type, dueOn, source: source.key });
  return reasons;
}

/** A user who is asked for more than a look before use needs as much practice as an inspector. */
function whoMayDo({ inspections }: SchemeDefinition, requirementId: string): DiaryEntry['who'] {
  const asked = inspections.find(({ id }) => id === requirementId)?.who ?? 'competentPerson';
  return asked === 'competentPerson' ? 'competentPerson' : 'inspector';
}

/** Who may do an examination of a type again that was failed; in doubt the competent person. */
function whoExamines({ inspections }: SchemeDefinition, gear: Gear, type: InspectionType): DiaryEntry['who'] {
  const asked = inspections.filter(
    (requirement) => requirement.type === type && requirement.kinds.includes(gear.kind),
  );
  const isInspectors = asked.length > 0 && asked.every(({ who }) => who !== 'competentPerson');
  return isInspectors ? 'inspector' : 'competentPerson';
}
