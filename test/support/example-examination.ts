import { addDays, type Day } from '../../src/rules/calendar/day.js';

/** What the API takes to sign a report of an item found fit: everything but a test and a defect, which are said not to be. */
export function examination(tag: string, today: Day, changes: object = {}): Record<string, unknown> {
  return {
    employerName: 'Marram Facades',
    employerAddress: '4 Slipway',
    premisesAddress: 'Yard, 1 Quay',
    identification: `Panel lifter ${tag}`,
    manufactureUnknown: true,
    noEarlierExamination: true,
    safeWorkingLoad: '500 kg',
    dependsOnConfiguration: false,
    firstAfterInstallation: false,
    occasion: 'beforeFirstUse',
    safeToOperate: true,
    noDefect: true,
    noTest: true,
    examinedOn: today,
    examinerAddress: '9 Ropewalk',
    examinerQualifications: 'examiner of lifting equipment',
    selfEmployed: true,
    declared: true,
    ...changes,
  };
}

/** What differs where a jaw is found cracked: a danger now. */
export const CRACKED = {
  safeToOperate: false,
  noDefect: false,
  defects: [{ part: 'jaw', description: 'cracked at the root', danger: 'is', remedy: 'renew the jaw' }],
};

/** What differs where a pad could become a danger after so many days. */
export function worn(today: Day, days: number) {
  const by = addDays(today, days);
  const defect = { part: 'pad', description: 'worn', danger: 'couldBecome', by, remedy: 'renew the pad' };
  return { noDefect: false, defects: [defect] };
}
