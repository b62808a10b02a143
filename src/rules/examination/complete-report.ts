import { checkReport } from './check-report.js';
import type { DraftDefect, ReportDraft, ReportFacts } from './draft.js';
import type { ReportGap } from './gap.js';
import type { ReportedDefect, ReportedOccasion, ReportParticulars } from './report.js';

/** A report with nothing open, or what is open. */
export type ReportOrGaps =
  | { readonly report: ReportParticulars; readonly gaps: readonly [] }
  | { readonly report?: never; readonly gaps: readonly ReportGap[] };

/** Makes a report of a draft that lacks nothing; of any other it gives the gaps. */
export function completeReport(draft: ReportDraft, facts: ReportFacts): ReportOrGaps {
  const gaps = checkReport(draft, facts);
  return gaps.length === 0 ? { report: particulars(draft, facts), gaps: [] } : { gaps };
}

function particulars(draft: ReportDraft, facts: ReportFacts): ReportParticulars {
  const { today, examinerName, latestNext } = facts;
  return {
    employerName: stated(draft.employerName),
    employerAddress: stated(draft.employerAddress),
    premisesAddress: stated(draft.premisesAddress),
    identification: stated(draft.identification),
    manufacturedOn: draft.manufacturedOn ?? null,
    lastExaminedOn: draft.lastExaminedOn ?? null,
    ...doubtOf(draft, facts),
    safeWorkingLoad: stated(draft.safeWorkingLoad),
    configuration: draft.configuration ?? null,
    occasion: occasionOf(draft),
    safeToOperate: stated(draft.safeToOperate),
    defects: (draft.defects ?? []).map(reported),
    nextExaminationBy: stated(draft.nextExaminationBy ?? latestNext),
    tests: draft.tests ?? null,
    examinedOn: stated(draft.examinedOn),
    examiner: {
      name: examinerName,
      address: stated(draft.examinerAddress),
      qualifications: stated(draft.examinerQualifications),
      employer: employerOf(draft),
    },
    signer: { name: examinerName, address: stated(draft.signerAddress) },
    reportedOn: today,
  };
}

function doubtOf(
  { registerDoubt: why }: ReportDraft,
  { lastOnRecord }: ReportFacts,
): Pick<ReportParticulars, 'registerDoubt'> {
  return why === undefined ? {} : { registerDoubt: { ...stated(lastOnRecord), why } };
}

function occasionOf({ firstAfterInstallation, installedCorrectly, occasion }: ReportDraft): ReportedOccasion {
  return stated(firstAfterInstallation)
    ? { firstAfterInstallation: true, installedCorrectly: stated(installedCorrectly) }
    : { firstAfterInstallation: false, occasion: stated(occasion) };
}

function employerOf(draft: ReportDraft): { name: string; address: string } | null {
  if (stated(draft.selfEmployed)) return null;
  return { name: stated(draft.examinerEmployerName), address: stated(draft.examinerEmployerAddress) };
}

function reported({ part, description, danger, by, remedy }: DraftDefect): ReportedDefect {
  const said = { part: stated(part), description: stated(description), danger: stated(danger) };
  return { ...said, ...(by === undefined ? {} : { by }), remedy: stated(remedy) };
}

/** A value that the check has found to be there. @throws Error when it is not: then the check has a hole. */
function stated<Value>(value: Value | undefined): Value {
  if (value === undefined) throw new Error('A report was made of a draft that has gaps.');
  return value;
}
