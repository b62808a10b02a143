import type { GapCode, ReportGap } from '../rules/examination/gap.js';
import { day } from '../web/sentences/words.js';

const SENTENCES: Readonly<Record<GapCode, string>> = {
  missing: 'fill this in',
  contradiction: 'goes against another answer: keep one of the two',
  names_another_item: 'names neither the tag nor the serial number of this item',
  danger_called_safe: 'a defect that is a danger was found: then it is not safe to operate',
  unsafe_without_reason: 'not safe to operate: then name the defect',
  in_future: 'is in the future at the store',
  before_manufacture: 'is before the day of manufacture',
  before_last_examination: 'is before the last examination',
  later_on_record: 'the register has one',
  not_after_examination: 'comes after the day of the examination; a danger by then is a danger now',
  later_than_allowed: 'is later than the rules allow: name that day or an earlier one',
};

/** What is wrong with a paragraph, and what to do about it. */
export function gapSentence({ paragraph, code, latest, onRecord }: ReportGap): string {
  const limit = latest === undefined ? '' : ` (the latest is ${day(latest)})`;
  const known = onRecord === undefined ? '' : recorded(onRecord);
  return `paragraph ${paragraph}: ${SENTENCES[code]}${limit}${known}`;
}

function recorded({ on, record }: NonNullable<ReportGap['onRecord']>): string {
  return ` on ${day(on)} (record ${record}): name that day or a later one, or say why you do not go by that record`;
}
