import type { Danger, Occasion } from '../rules/examination/report.js';

/** What called for an examination, as the choice on the form. */
export const OCCASION_CHOICES: Readonly<Record<Occasion, string>> = {
  sixMonths: 'the 6 months were up',
  twelveMonths: 'the 12 months were up',
  scheme: 'an examination scheme asks for it',
  exceptional: 'something happened that could have made it unsafe',
  beforeFirstUse: 'it is about to be used for the first time here',
};

/** The same as the report says it. */
const OCCASION_SENTENCES: Readonly<Record<Occasion, string>> = {
  sixMonths: 'An examination within the interval of 6 months.',
  twelveMonths: 'An examination within the interval of 12 months.',
  scheme: 'An examination in accordance with an examination scheme.',
  exceptional: 'An examination after exceptional circumstances.',
  beforeFirstUse: 'None of the four: an examination before first use, regulation 9(1).',
};

export const DANGER_CHOICES: Readonly<Record<Danger, string>> = {
  is: 'is a danger now',
  couldBecome: 'could become a danger',
};

/** What called for the examination. */
export function occasionSentence({ occasion }: { readonly occasion?: Occasion }): string {
  return occasion === undefined ? 'Does not apply: see 6(a).' : OCCASION_SENTENCES[occasion];
}

/** `yes` and `no` for a choice that has to be made. */
export const YES_OR_NO = [
  { value: 'true', label: 'yes' },
  { value: 'false', label: 'no' },
] as const;
