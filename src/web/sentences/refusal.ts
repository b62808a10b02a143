import type { Refusal, RefusalCode } from '../../rules/fitness/refusal.js';
import { Exact } from '../../rules/quantities/exact.js';
import { INSPECTION_NAMES, day, figure, hasFigure, needFigure, sizeName } from './words.js';

/** What a refusal says to the storeman, and what to do about it. */
export function refusalSentence(refusal: Refusal): string {
  return SENTENCES[refusal.code](refusal);
}

const SENTENCES: Readonly<Record<RefusalCode, (refusal: Refusal) => string>> = {
  scrapped: () => 'Scrapped. It never comes back into use.',
  quarantined: () => 'In quarantine. A competent person must examine and release it.',
  under_repair: () => 'Under repair. It needs an examination before it is used again.',
  missing: () => 'Missing: it did not come back from a job.',
  defect_deadline: (refusal) => `A defect allows use until ${on(refusal)} only. Have it put right.`,
  wrong_kind: (refusal) => `Another kind of gear than the ${refusal.needed ?? 'one'} this line needs.`,
  wrong_duty: (refusal) =>
    `Not made for this duty${refusal.needed ? ` (${sizeName(refusal.needed)})` : ''}; a lashing capacity never serves a lifting duty.`,
  need_unsettled: (refusal) =>
    `What this line needs is not settled${refusal.subject ? ` (${sizeName(refusal.subject)})` : ''}. Look at the calculation of the job.`,
  unrated: () => 'No readable rating on record. Enter it from the plate, or leave the item out.',
  rating_not_comparable: (refusal) =>
    `Its rating cannot be compared with what is needed${compared(refusal)}.`,
  under_rated: (refusal) => `Rated too low${compared(refusal)}.`,
  unknown_size: (refusal) =>
    `Its ${sizeName(refusal.subject ?? 'size')} is not on record${needs(refusal)}. Measure it.`,
  too_short: (refusal) => `Too short${compared(refusal)}.`,
  does_not_fit_machine: (refusal) => `Does not fit the machine${compared(refusal)}.`,
  does_not_fit_panel: (refusal) =>
    isTooLarge(refusal)
      ? `Does not close on the thinnest panel: ${sizeName(refusal.subject ?? 'size')} ${figure(refusal.has ?? '', refusal.unit)}, needs ${figure(refusal.needed ?? '', refusal.unit)} or less.`
      : `Does not take the thickest panel${compared(refusal)}.`,
  no_load_chart: () => 'No load chart that can be read is on record. Enter it from the plate or the manual.',
  outside_load_chart: outsideChart,
  residual_capacity_too_low: (refusal) => `Carries too little with the lifter on it${compared(refusal)}.`,
  attachment_not_covered: () =>
    'Neither its plate nor a letter of its maker is on record as covering the lifter. Record one, or take a machine that has it.',
  never_examined: (refusal) => `Never had its ${inspection(refusal)}. Have it done first.`,
  failed_examination: (refusal) =>
    `Failed its ${inspection(refusal)}${refusal.on ? ` on ${day(refusal.on)}` : ''}.`,
  out_of_date: (refusal) => `Out of date: its ${inspection(refusal)} was due on ${on(refusal)}.`,
  due_during_job: (refusal) =>
    `Goes out of date during the job: its ${inspection(refusal)} is due on ${on(refusal)}.`,
  examine_after_event: (refusal) =>
    `Something happened to it${refusal.on ? ` on ${day(refusal.on)}` : ''} that calls for a fresh ${inspection(refusal)}.`,
  lifts_used_up: (refusal) =>
    `Made ${refusal.has ?? 'all'} lifts since its last ${inspection(refusal)}, and one is due every ${refusal.needed ?? 'so many'}. Have it examined before the next lift.`,
  past_service_life: (refusal) => `Past its service life, which ended on ${on(refusal)}.`,
  service_life_ends_during_job: (refusal) => `Its service life ends during the job, on ${on(refusal)}.`,
  service_life_unknown: () =>
    'The day its service life counts from is not on record. Enter it from the label.',
  certificate_missing: (refusal) => `The report of its ${inspection(refusal)} is not on file.`,
  label_illegible: () => 'Its label cannot be read, so it must not be used.',
  serial_unknown: () => 'Its serial number is not known, so no certificate can be matched to it.',
  no_rule_for_kind: () =>
    'The rules of this place say nothing about this kind, so its fitness cannot be told.',
  outside_hire: (refusal) =>
    refusal.subject === 'hiredFrom'
      ? `On hire from ${on(refusal)} only. Hire it earlier, or move the days.`
      : `On hire through ${on(refusal)} only. Extend the hire, or move the days.`,
  promised_elsewhere: (refusal) =>
    `Promised to job ${refusal.jobReference ?? 'another job'}${refusal.on ? ` until ${day(refusal.on)}` : ''}.`,
  not_back_yet: (refusal) =>
    `Not back yet from job ${refusal.jobReference ?? 'another job'}${refusal.on ? `, due back on ${day(refusal.on)}` : ''}.`,
  at_another_store: (refusal) =>
    `At another store${refusal.has ? ` (${refusal.has})` : ''}, and this job takes from its own store only.`,
  excluded_by_storeman: () => 'Left out by the storeman.',
};

function outsideChart({ subject = 'distance', needed, has, unit }: Refusal): string {
  const name = sizeName(subject);
  return needed === undefined
    ? `How far out the load hangs is not said, and its load chart goes by ${name}.`
    : `Outside its load chart: ${name} ${figure(needed, unit)} is needed, and the chart ends at ${figure(has ?? '0', unit)}. It says nothing past its end.`;
}

/** A size that may be at most so large is the only one that is refused for having more. */
function isTooLarge({ needed, has }: Refusal): boolean {
  return needed !== undefined && has !== undefined && Exact.of(needed).isLessThan(Exact.of(has));
}

function on({ on: value }: Refusal): string {
  return value ? day(value) : 'an unknown day';
}

function inspection({ subject }: Refusal): string {
  return Object.entries(INSPECTION_NAMES).find(([type]) => type === subject)?.[1] ?? 'examination';
}

function compared({ needed, has, unit }: Refusal): string {
  const parts = [
    has === undefined ? '' : `has ${hasFigure(has, unit)}`,
    needed === undefined ? '' : `needs ${needFigure(needed, unit)}`,
  ].filter(Boolean);
  return parts.length > 0 ? `: ${parts.join(', ')}` : '';
}

function needs({ needed, unit }: Refusal): string {
  return needed === undefined ? '' : ` (needed: ${needFigure(needed, unit)})`;
}
