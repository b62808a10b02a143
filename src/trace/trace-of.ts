import type { CountedDay } from '../custody/lift-counts.js';
import { wasOutOn, type Stay } from '../custody/stays.js';
import type { ReportedDefect } from '../inspections/records-of-items.js';
import type { Day } from '../rules/calendar/day.js';
import type { DefectTraceView, TracedStayView } from './trace.dto.js';
import { asTraced, type TracedRecord } from './traced-records.js';

/** Who gave an item out or took it in, and the instant of it. */
export interface HandOver {
  readonly way: 'out' | 'in';
  readonly at: string;
  readonly by: string;
}

/** What is known of an item that a defect was found on. */
export interface Found {
  readonly reportedOn: Day;
  readonly stays: readonly Stay[];
  readonly records: readonly TracedRecord[];
  readonly lifts: readonly CountedDay[];
  readonly handOvers: readonly HandOver[];
}

/** The defect with the names that its trace shows. */
export type NamedDefect = ReportedDefect & { readonly tag: string; readonly reporter: string | null };

/** Puts a trace together: what was good last, and every job, day and person from there to the defect. */
export function traceOf(defect: NamedDefect, found: Found): DefectTraceView {
  const { reportedOn } = found;
  const passed = found.records.filter((record) => isBefore(record, defect, reportedOn));
  const lastGood = passed.at(-1);
  const lastExamined = passed.findLast(({ type }) => type !== 'preUseCheck');
  const from = (lastExamined ?? lastGood)?.doneOn;
  const between = found.stays.filter(
    (stay) => stay.from <= reportedOn && (from === undefined || !endsBefore(stay, from)),
  );
  const stays = between.map((stay) => tracedStay(stay, found, { from, goodOn: lastGood?.doneOn }));
  const days = stays.flatMap(({ liftDays }) => liftDays);
  const { id, itemId, tag, severity, description, reporter } = defect;
  return {
    defect: { id, itemId, tag, severity, description, reportedOn, reportedBy: reporter },
    lastGood: lastGood ? asTraced(lastGood) : null,
    lastExamined: lastExamined ? asTraced(lastExamined) : null,
    stays,
    lifts: sum(days),
    liftsSinceLastGood: sum(days.filter(({ onDay }) => !lastGood || onDay >= lastGood.doneOn)),
  };
}

/** What was recorded in the same change as the defect is the very examination that found it. */
function isBefore(
  { outcome, doneOn, recordedAt, clockDoubtful }: TracedRecord,
  defect: ReportedDefect,
  reportedOn: Day,
): boolean {
  if (outcome !== 'fit' || clockDoubtful || recordedAt === defect.recordedAt) return false;
  return doneOn < reportedOn || (doneOn === reportedOn && recordedAt < defect.recordedAt);
}

function tracedStay(
  stay: Stay,
  { reportedOn, records, lifts, handOvers }: Found,
  { from, goodOn }: { from: Day | undefined; goodOn: Day | undefined },
): TracedStayView {
  const isTraced = (day: Day) =>
    wasOutOn(stay, day) && day <= reportedOn && (from === undefined || day >= from);
  const personAt = (way: HandOver['way'], at: string | null) =>
    handOvers.find((each) => each.way === way && each.at === at)?.by ?? null;
  const { jobId, jobReference, jobName, site, state, returnRemarks } = stay;
  return {
    ...{ jobId, jobReference, jobName, site, state, returnRemarks },
    from: stay.from,
    ...(stay.through === undefined ? {} : { through: stay.through }),
    handedOutBy: personAt('out', stay.handedOutAt),
    broughtBackBy: personAt('in', stay.settledAt),
    sinceLastGood: goodOn === undefined || !endsBefore(stay, goodOn),
    records: records.filter(({ doneOn }) => isTraced(doneOn)).map(asTraced),
    liftDays: lifts
      .filter((day) => day.jobId === jobId && isTraced(day.onDay))
      .map(({ onDay, lifts: number, recordedAt }) => ({ onDay, lifts: number, recordedAt })),
  };
}

function endsBefore({ through }: Stay, day: Day): boolean {
  return through !== undefined && through < day;
}

function sum(days: readonly { readonly lifts: number }[]): number {
  return days.reduce((total, { lifts }) => total + lifts, 0);
}
