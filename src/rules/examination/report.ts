import type { Day } from '../calendar/day.js';

/** The paragraphs of LOLER 1998 Schedule 1 that a report answers, in its order. */
export const PARAGRAPHS = [
  '1',
  '2',
  '3',
  '4',
  '5',
  '6(a)',
  '6(b)',
  '7(a)',
  '7(b)',
  '8(a)',
  '8(b)',
  '8(c)',
  '8(d)',
  '8(e)',
  '8(f)',
  '9',
  '10',
  '11',
] as const;
export type Paragraph = (typeof PARAGRAPHS)[number];

/**
 * What called for an examination that is not the first after installation: the four of paragraph 7(a), and the one
 * before first use of regulation 9(1), which is none of the four.
 */
export const OCCASIONS = ['sixMonths', 'twelveMonths', 'scheme', 'exceptional', 'beforeFirstUse'] as const;
export type Occasion = (typeof OCCASIONS)[number];

/** Whether a defect is a danger now or could become one: the Schedule asks for different things of the two. */
export const DANGERS = ['is', 'couldBecome'] as const;
export type Danger = (typeof DANGERS)[number];

/** A part with a defect that is, or could become, a danger to persons. Paragraph 8(a) to (c). */
export interface ReportedDefect {
  readonly part: string;
  readonly description: string;
  readonly danger: Danger;
  /** For what could become a danger: the last day of use unless it is put right. */
  readonly by?: Day;
  /** The repair, renewal or alteration that puts it right. */
  readonly remedy: string;
}

/** Paragraph 6 or 7: the first examination after installation, or another and what called for it. */
export type ReportedOccasion =
  | { readonly firstAfterInstallation: true; readonly installedCorrectly: boolean }
  | { readonly firstAfterInstallation: false; readonly occasion: Occasion };

/** Who answers for the examination, and for whom they work. Paragraph 9. */
export interface ReportedExaminer {
  readonly name: string;
  readonly address: string;
  readonly qualifications: string;
  /** Null of an examiner who is self-employed. */
  readonly employer: { readonly name: string; readonly address: string } | null;
}

/** A thorough examination as the register has it. */
export interface ExaminationOnRecord {
  readonly on: Day;
  /** The number of its record. */
  readonly record: number;
}

/** The particulars of a report of thorough examination: everything that LOLER 1998 Schedule 1 asks for, none left open. */
export interface ReportParticulars {
  readonly employerName: string;
  readonly employerAddress: string;
  readonly premisesAddress: string;
  readonly identification: string;
  /** Null where the day of manufacture is not known. */
  readonly manufacturedOn: Day | null;
  /** Null where no earlier examination is known. */
  readonly lastExaminedOn: Day | null;
  /** What the register has, where the examiner does not go by it, and why. */
  readonly registerDoubt?: ExaminationOnRecord & { readonly why: string };
  readonly safeWorkingLoad: string;
  /** The configuration that the safe working load holds for; null where it does not depend on one. */
  readonly configuration: string | null;
  readonly occasion: ReportedOccasion;
  readonly safeToOperate: boolean;
  /** Empty where none was found. */
  readonly defects: readonly ReportedDefect[];
  /** The last day before which it has to be examined again. */
  readonly nextExaminationBy: Day;
  /** Particulars of the tests that were part of it; null where there was none. */
  readonly tests: string | null;
  readonly examinedOn: Day;
  readonly examiner: ReportedExaminer;
  readonly signer: { readonly name: string; readonly address: string };
  readonly reportedOn: Day;
}
