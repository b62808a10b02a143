import { checkDefects } from './check-defects.js';
import { checkDays } from './check-days.js';
import type { ReportDraft, ReportFacts } from './draft.js';
import { gap, isBlank, type ReportGap } from './gap.js';
import { PARAGRAPHS, type Paragraph } from './report.js';

type TextField =
  | 'employerName'
  | 'employerAddress'
  | 'premisesAddress'
  | 'identification'
  | 'safeWorkingLoad'
  | 'examinerAddress'
  | 'examinerQualifications'
  | 'signerAddress';

/** Texts that every report needs, and the paragraph that asks. */
const ALWAYS: readonly (readonly [TextField, Paragraph])[] = [
  ['employerName', '1'],
  ['employerAddress', '1'],
  ['premisesAddress', '2'],
  ['identification', '3'],
  ['safeWorkingLoad', '5'],
  ['examinerAddress', '9'],
  ['examinerQualifications', '9'],
  ['signerAddress', '10'],
];

/**
 * Everything that keeps a draft from being a report by LOLER 1998 Schedule 1: each paragraph that lacks something or
 * contradicts another, in the order of the Schedule. None means that it is complete. In doubt a report is not one.
 */
export function checkReport(draft: ReportDraft, facts: ReportFacts): ReportGap[] {
  const texts = ALWAYS.filter(([field]) => isBlank(draft[field])).map(([field, paragraph]) =>
    gap(paragraph, field, 'missing'),
  );
  return [
    ...texts,
    ...checkIdentity(draft, facts),
    ...checkConfiguration(draft),
    ...checkOccasion(draft),
    ...checkDefects(draft),
    ...checkTests(draft),
    ...checkEmployment(draft),
    ...checkDays(draft, facts),
  ].sort((a, b) => PARAGRAPHS.indexOf(a.paragraph) - PARAGRAPHS.indexOf(b.paragraph));
}

function checkIdentity({ identification = '' }: ReportDraft, { marks }: ReportFacts): ReportGap[] {
  if (isBlank(identification) || marks.some((mark) => identification.includes(mark))) return [];
  return [gap('3', 'identification', 'names_another_item')];
}

function checkConfiguration({ dependsOnConfiguration, configuration }: ReportDraft): ReportGap[] {
  if (dependsOnConfiguration === undefined) return [gap('5', 'dependsOnConfiguration', 'missing')];
  if (dependsOnConfiguration && isBlank(configuration)) return [gap('5', 'configuration', 'missing')];
  return !dependsOnConfiguration && !isBlank(configuration)
    ? [gap('5', 'configuration', 'contradiction')]
    : [];
}

/** Paragraphs 6 and 7 exclude each other: which of the two applies is the first thing to say. */
function checkOccasion(draft: ReportDraft): ReportGap[] {
  const { firstAfterInstallation, installedCorrectly, occasion, safeToOperate } = draft;
  if (firstAfterInstallation === undefined) return [gap('6(a)', 'firstAfterInstallation', 'missing')];
  const gaps: ReportGap[] = [];
  if (firstAfterInstallation) {
    if (installedCorrectly === undefined) gaps.push(gap('6(b)', 'installedCorrectly', 'missing'));
    if (occasion !== undefined) gaps.push(gap('7(a)', 'occasion', 'contradiction'));
    if (installedCorrectly === false && safeToOperate === true)
      gaps.push(gap('6(b)', 'safeToOperate', 'contradiction'));
  } else {
    if (occasion === undefined) gaps.push(gap('7(a)', 'occasion', 'missing'));
    if (installedCorrectly !== undefined) gaps.push(gap('6(b)', 'installedCorrectly', 'contradiction'));
  }
  if (safeToOperate === undefined)
    gaps.push(gap(firstAfterInstallation ? '6(b)' : '7(b)', 'safeToOperate', 'missing'));
  return gaps;
}

function checkTests({ tests, noTest }: ReportDraft): ReportGap[] {
  if (isBlank(tests)) return noTest === true ? [] : [gap('8(e)', 'tests', 'missing')];
  return noTest === true ? [gap('8(e)', 'noTest', 'contradiction')] : [];
}

function checkEmployment(draft: ReportDraft): ReportGap[] {
  const { selfEmployed } = draft;
  if (selfEmployed === undefined) return [gap('9', 'selfEmployed', 'missing')];
  return (['examinerEmployerName', 'examinerEmployerAddress'] as const).flatMap((field) => {
    if (isBlank(draft[field]) === selfEmployed) return [];
    return [gap('9', field, selfEmployed ? 'contradiction' : 'missing')];
  });
}
