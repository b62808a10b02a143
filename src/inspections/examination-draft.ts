import type { ReportDraft } from '../rules/examination/draft.js';
import { toDay, type Day } from '../rules/calendar/day.js';
import type { NewExaminationDto } from './examinations.dto.js';

/** The draft that a request holds. The one who signs is the examiner, so one address serves for both. */
export function draftOf(input: NewExaminationDto): ReportDraft {
  const { supersedesId: _, release: __, declared: ___, ...fields } = input;
  return {
    ...fields,
    manufacturedOn: dayOf(input.manufacturedOn),
    lastExaminedOn: dayOf(input.lastExaminedOn),
    examinedOn: dayOf(input.examinedOn),
    nextExaminationBy: dayOf(input.nextExaminationBy),
    signerAddress: input.signerAddress ?? input.examinerAddress,
    defects: (input.defects ?? []).map((defect) => ({ ...defect, by: dayOf(defect.by) })),
  };
}

function dayOf(text: string | undefined): Day | undefined {
  return text === undefined ? undefined : toDay(text);
}
