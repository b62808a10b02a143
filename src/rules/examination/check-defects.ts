import type { Day } from '../calendar/day.js';
import type { DraftDefect, ReportDraft } from './draft.js';
import { gap, isBlank, type ReportGap } from './gap.js';
import type { Danger } from './report.js';

/**
 * Paragraph 8(a) to (c): every defect with its part, description and remedy, and for one that could become a danger the
 * day by which. What is a danger is not safe to operate, and what is not safe to operate has a reason on the report.
 */
export function checkDefects(draft: ReportDraft): ReportGap[] {
  const { defects = [], noDefect, safeToOperate, installedCorrectly } = draft;
  if (defects.length === 0) {
    if (noDefect !== true) return [gap('8(a)', 'defects', 'missing')];
    const hasReason = installedCorrectly === false;
    return safeToOperate === false && !hasReason ? [gap('8(a)', 'defects', 'unsafe_without_reason')] : [];
  }
  const gaps = defects.flatMap((defect, row) => checkRow(defect, `defects[${row}]`, draft));
  if (noDefect === true) gaps.push(gap('8(a)', 'noDefect', 'contradiction'));
  if (safeToOperate === true && defects.some(({ danger }) => danger === 'is')) {
    const paragraph = draft.firstAfterInstallation === true ? '6(b)' : '7(b)';
    gaps.push(gap(paragraph, 'safeToOperate', 'danger_called_safe'));
  }
  return gaps;
}

function checkRow(defect: DraftDefect, name: string, { examinedOn }: ReportDraft): ReportGap[] {
  const { danger, by } = defect;
  const gaps = (['part', 'description'] as const)
    .filter((field) => isBlank(defect[field]))
    .map((field) => gap('8(a)', `${name}.${field}`, 'missing'));
  if (danger === undefined) gaps.push(gap('8(a)', `${name}.danger`, 'missing'));
  if (isBlank(defect.remedy))
    gaps.push(gap(danger === 'couldBecome' ? '8(c)' : '8(b)', `${name}.remedy`, 'missing'));
  if (danger === 'couldBecome' && by === undefined) gaps.push(gap('8(c)', `${name}.by`, 'missing'));
  return by === undefined ? gaps : [...gaps, ...checkLastDay(`${name}.by`, { danger, by, examinedOn })];
}

/** The last day of use goes with what is no danger yet, and lies after the examination. */
function checkLastDay(
  field: string,
  { danger, by, examinedOn }: { danger: Danger | undefined; by: Day; examinedOn: Day | undefined },
): ReportGap[] {
  const gaps: ReportGap[] = [];
  if (danger === 'is') gaps.push(gap('8(c)', field, 'contradiction'));
  if (examinedOn !== undefined && by <= examinedOn) gaps.push(gap('8(c)', field, 'not_after_examination'));
  return gaps;
}
