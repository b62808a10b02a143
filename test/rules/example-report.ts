import type { ReportDraft, ReportFacts } from '../../src/rules/examination/draft.js';
import { day, TODAY } from './example-gear.js';

/** A complete report of a sling found fit on the day. */
export function draft(changes: ReportDraft = {}): ReportDraft {
  return {
    employerName: 'Marram Facades',
    employerAddress: '4 Slipway',
    premisesAddress: '1 Quay',
    identification: 'Sling SL-014, serial number HW 22',
    manufacturedOn: day('2024-06-10'),
    lastExaminedOn: day('2025-12-10'),
    safeWorkingLoad: '2 t in a straight pull',
    dependsOnConfiguration: false,
    firstAfterInstallation: false,
    occasion: 'sixMonths',
    safeToOperate: true,
    noDefect: true,
    tests: 'none but by eye and by gauge',
    examinedOn: TODAY,
    examinerAddress: '9 Ropewalk',
    examinerQualifications: 'examiner of lifting equipment',
    selfEmployed: false,
    examinerEmployerName: 'Ropewalk Examinations',
    examinerEmployerAddress: '9 Ropewalk',
    signerAddress: '9 Ropewalk',
    ...changes,
  };
}

/** A defect that is a danger now, so that the item is not safe. */
export const DANGER: ReportDraft = {
  noDefect: undefined,
  safeToOperate: false,
  defects: [{ part: 'eye', description: 'stitching cut', danger: 'is', remedy: 'scrap it' }],
};

/** A defect that could become a danger by a day. */
export const POSSIBLE_DANGER: ReportDraft = {
  noDefect: undefined,
  defects: [
    {
      part: 'sleeve',
      description: 'worn thin',
      danger: 'couldBecome',
      by: day('2026-09-01'),
      remedy: 'renew the sleeve',
    },
  ],
};

/** Signed by Person One on the day the examples are looked at from; the rules allow half a year. */
export function facts(changes: Partial<ReportFacts> = {}): ReportFacts {
  return {
    today: TODAY,
    examinerName: 'Person One',
    marks: ['SL-014', 'HW 22'],
    latestNext: day('2026-12-10'),
    ...changes,
  };
}
