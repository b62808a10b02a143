import { addDays, earliest, type Day } from '../calendar/day.js';
import type { EventType, Gear, GearEvent, InspectionRecord, InspectionType } from '../gear/gear.js';
import type { Citation } from '../citation.js';
import type { Working } from '../working.js';
import { idleInspection, type IdleInspection } from './idle.js';
import { requirementsInForce, type RequirementInForce } from './in-force.js';
import { failedExaminations, lastInspection, lastPassed, type FailedExamination } from './last-inspection.js';
import { liftsUsed, type LiftsUsed } from './lifts-used.js';
import { ruleDays } from './rule-days.js';
import type { SchemeDefinition, Trigger } from './scheme.js';

/** What a reader of the dates should know that is no refusal by itself. */
export type DueCaution = 'inspection_in_future_ignored' | 'written_scheme_ignored' | 'long_idle';

/** One inspection that is asked of the item, and where it stands. */
export interface InspectionDue {
  readonly requirementId: string;
  readonly type: InspectionType;
  readonly source: Citation;
  readonly certificateRequired: boolean;
  readonly lastDoneOn?: Day;
  /** The last day the item is in date for this inspection; absent when no rule gives one. */
  readonly dueOn?: Day;
  /** True when it was never done and the item may not be used before it is. */
  readonly neverExamined: boolean;
  /** The latest event since the last inspection that calls for a new one before use. */
  readonly afterEvent?: { readonly type: EventType; readonly on: Day };
  /** Lifts counted since the last one passed against those allowed, where a rule counts them. */
  readonly lifts?: { readonly counted: number; readonly allowed: number; readonly usedUpOn?: Day };
  /** How long it has lain idle, where a rule asks for an inspection after that. It takes nothing out of date. */
  readonly idle?: IdleInspection;
  /** How each rule that applies came to its day, the earliest first, and then to the lifts that are left. */
  readonly workings: readonly Working[];
}

/** Where an item stands with its dates, as known on one day. */
export interface DueReport {
  /** The earliest of all due days, the defect deadline, and the days of failed examinations, of events since and of lifts used up. */
  readonly dueOn?: Day;
  /** False when the scheme has nothing in force for the kind, not even a pre-use check. */
  readonly hasRule: boolean;
  /** Every inspection in force but pre-use checks, in the scheme's order. */
  readonly inspections: readonly InspectionDue[];
  readonly failed: readonly FailedExamination[];
  readonly defectDeadline?: Day;
  readonly cautions: readonly DueCaution[];
}

/**
 * When each inspection of the item falls due, by the scheme in force on `today`: the earliest day that any rule
 * gives, counted from the day of the last inspection passed. What failed, met with an event since, or has made the
 * lifts it is allowed, is due at once.
 */
export function dueDates(gear: Gear, scheme: SchemeDefinition, today: Day): DueReport {
  const inForce = requirementsInForce(scheme, gear.kind, today);
  const stands = inForce
    .filter(({ requirement }) => requirement.type !== 'preUseCheck')
    .map((rule) => standing(gear, rule, today));
  const inspections = stands.map(({ inspection }) => inspection);
  const failed = failedExaminations(gear, today);
  const { defectDeadline } = gear;
  const dueOn = earliest([
    ...failed.map(({ on }) => on),
    ...inspections.flatMap(({ dueOn, afterEvent, lifts }) =>
      [dueOn, afterEvent?.on, lifts?.usedUpOn].filter((day) => day !== undefined),
    ),
    ...(defectDeadline === undefined ? [] : [defectDeadline]),
  ]);
  const cautions: DueCaution[] = [];
  if (gear.inspections.some(({ doneOn }) => doneOn > today)) cautions.push('inspection_in_future_ignored');
  if (stands.some(({ ignoredWrittenScheme }) => ignoredWrittenScheme))
    cautions.push('written_scheme_ignored');
  if (inspections.some(({ idle }) => idle !== undefined)) cautions.push('long_idle');
  return {
    ...(dueOn === undefined ? {} : { dueOn }),
    hasRule: inForce.length > 0,
    inspections,
    failed,
    ...(defectDeadline === undefined ? {} : { defectDeadline }),
    cautions,
  };
}

function standing(
  gear: Gear,
  rule: RequirementInForce,
  today: Day,
): { inspection: InspectionDue; ignoredWrittenScheme: boolean } {
  const { requirement, triggers, source } = rule;
  const last = lastInspection(gear, requirement.type, today);
  const { days, neverExamined, ignoredWrittenScheme } = ruleDays(gear, rule, today);
  const ordered = [...days].sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
  const dueOn = ordered[0]?.on;
  const afterEvent = eventSince(gear, triggers.flatMap(eventsOf), last);
  const lifts = liftsUsed(gear, rule, lastPassed(gear, requirement.type, today)?.doneOn);
  const idle = idleInspection(gear, triggers, { lastDoneOn: last?.doneOn, today });
  const inspection: InspectionDue = {
    requirementId: requirement.id,
    type: requirement.type,
    source,
    certificateRequired: requirement.certificateRequired,
    ...(last === undefined ? {} : { lastDoneOn: last.doneOn }),
    ...(dueOn === undefined ? {} : { dueOn }),
    neverExamined,
    ...(afterEvent === undefined ? {} : { afterEvent }),
    ...(lifts === undefined ? {} : { lifts: withoutWorking(lifts) }),
    ...(idle === undefined ? {} : { idle }),
    workings: [...ordered.map(({ working }) => working), ...(lifts === undefined ? [] : [lifts.working])],
  };
  return { inspection, ignoredWrittenScheme };
}

function withoutWorking({ counted, allowed, usedUpOn }: LiftsUsed): NonNullable<InspectionDue['lifts']> {
  return { counted, allowed, ...(usedUpOn === undefined ? {} : { usedUpOn }) };
}

function eventsOf(trigger: Trigger): readonly EventType[] {
  return trigger.when === 'afterEvent' ? trigger.events : [];
}

/**
 * The latest event that calls for an inspection and has none after it. On the day of the last inspection the event
 * is taken as the later of the two, in doubt refuse, unless the records say that it was answered on that day.
 */
function eventSince(
  gear: Gear,
  calledFor: readonly EventType[],
  last: InspectionRecord | undefined,
): { readonly type: EventType; readonly on: Day } | undefined {
  return gear.events
    .filter((event) => calledFor.includes(event.type) && !isAnswered(event, last))
    .reduce<GearEvent | undefined>(
      (latest, event) => (latest === undefined || event.on > latest.on ? event : latest),
      undefined,
    );
}

function isAnswered({ on, answeredBy = [] }: GearEvent, last: InspectionRecord | undefined): boolean {
  if (last === undefined) return false;
  return on < last.doneOn || (on === last.doneOn && answeredBy.includes(last.type));
}

/** How an item stands with its dates, in one word. */
export type Currency = 'inDate' | 'dueSoon' | 'outOfDate' | 'neverExamined' | 'notRequired';

/**
 * How the item stands on `today`: due soon when its due day is no more than `leadDays` away, the due day itself
 * being in date. `notRequired` says that nothing but a pre-use check is asked, or nothing at all (`hasRule`).
 */
export function currency(report: DueReport, today: Day, leadDays: number): Currency {
  const { dueOn, inspections, failed } = report;
  if (inspections.some(({ neverExamined }) => neverExamined)) return 'neverExamined';
  if (failed.length > 0 || inspections.some(isDueAtOnce)) return 'outOfDate';
  if (dueOn === undefined) return inspections.length === 0 ? 'notRequired' : 'inDate';
  if (dueOn < today) return 'outOfDate';
  return dueOn <= addDays(today, leadDays) ? 'dueSoon' : 'inDate';
}

function isDueAtOnce({ afterEvent, lifts }: InspectionDue): boolean {
  return afterEvent !== undefined || lifts?.usedUpOn !== undefined;
}
