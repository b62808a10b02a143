import type { ReportDraft, ReportFacts } from './draft.js';
import { gap, isBlank, type ReportGap } from './gap.js';

/**
 * The days of a report: manufacture (3), last examination (4), this one (8(f)) and the next (8(d)), in that order.
 * The next may be named earlier than the rules give, never later, and never no day at all.
 */
export function checkDays(draft: ReportDraft, facts: ReportFacts): ReportGap[] {
  return [
    ...checkPast(draft),
    ...checkRecorded(draft, facts),
    ...checkExamined(draft, facts),
    ...checkNext(draft, facts),
  ];
}

function checkPast(draft: ReportDraft): ReportGap[] {
  const { manufacturedOn, manufactureUnknown, lastExaminedOn, noEarlierExamination } = draft;
  const gaps: ReportGap[] = [];
  if (manufacturedOn === undefined && manufactureUnknown !== true)
    gaps.push({ paragraph: '3', field: 'manufacturedOn', code: 'missing' });
  if (manufacturedOn !== undefined && manufactureUnknown === true)
    gaps.push({ paragraph: '3', field: 'manufactureUnknown', code: 'contradiction' });
  if (lastExaminedOn === undefined && noEarlierExamination !== true)
    gaps.push({ paragraph: '4', field: 'lastExaminedOn', code: 'missing' });
  if (lastExaminedOn !== undefined && noEarlierExamination === true)
    gaps.push({ paragraph: '4', field: 'noEarlierExamination', code: 'contradiction' });
  return gaps;
}

/**
 * A day before that of the register, or none, stands only with a word of why: the register may be wrong, and an examiner
 * signs what they hold to be true.
 */
function checkRecorded(draft: ReportDraft, { lastOnRecord: onRecord }: ReportFacts): ReportGap[] {
  const { lastExaminedOn, noEarlierExamination, registerDoubt } = draft;
  const isSaid = lastExaminedOn !== undefined || noEarlierExamination === true;
  const differs = onRecord !== undefined && (lastExaminedOn === undefined || lastExaminedOn < onRecord.on);
  if (!differs) return isBlank(registerDoubt) ? [] : [gap('4', 'registerDoubt', 'contradiction')];
  if (!isSaid || !isBlank(registerDoubt)) return [];
  return [{ ...gap('4', 'lastExaminedOn', 'later_on_record'), onRecord }];
}

function checkExamined(draft: ReportDraft, { today }: ReportFacts): ReportGap[] {
  const { examinedOn, manufacturedOn, lastExaminedOn } = draft;
  const field = 'examinedOn';
  if (examinedOn === undefined) return [{ paragraph: '8(f)', field, code: 'missing' }];
  const gaps: ReportGap[] = [];
  if (examinedOn > today) gaps.push({ paragraph: '8(f)', field, code: 'in_future' });
  if (manufacturedOn !== undefined && examinedOn < manufacturedOn)
    gaps.push({ paragraph: '8(f)', field, code: 'before_manufacture' });
  if (lastExaminedOn !== undefined && examinedOn < lastExaminedOn)
    gaps.push({ paragraph: '8(f)', field, code: 'before_last_examination' });
  return gaps;
}

function checkNext(draft: ReportDraft, { latestNext }: ReportFacts): ReportGap[] {
  const { examinedOn, nextExaminationBy = latestNext } = draft;
  const field = 'nextExaminationBy';
  if (nextExaminationBy === undefined) return [{ paragraph: '8(d)', field, code: 'missing' }];
  if (latestNext !== undefined && nextExaminationBy > latestNext)
    return [{ paragraph: '8(d)', field, code: 'later_than_allowed', latest: latestNext }];
  if (examinedOn !== undefined && nextExaminationBy <= examinedOn)
    return [{ paragraph: '8(d)', field, code: 'not_after_examination' }];
  return [];
}
