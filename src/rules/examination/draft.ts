import type { Day } from '../calendar/day.js';
import type { Danger, ExaminationOnRecord, Occasion } from './report.js';

/** A row of the defects as far as it is filled in. */
export interface DraftDefect {
  readonly part?: string | undefined;
  readonly description?: string | undefined;
  readonly danger?: Danger | undefined;
  readonly by?: Day | undefined;
  readonly remedy?: string | undefined;
}

/** A report as far as it is filled in. That there was nothing is said in so many words: a blank is never taken for a no. */
export interface ReportDraft {
  readonly employerName?: string | undefined;
  readonly employerAddress?: string | undefined;
  readonly premisesAddress?: string | undefined;
  readonly identification?: string | undefined;
  readonly manufacturedOn?: Day | undefined;
  readonly manufactureUnknown?: boolean | undefined;
  readonly lastExaminedOn?: Day | undefined;
  readonly noEarlierExamination?: boolean | undefined;
  /** Why the examiner does not go by the last examination that the register has. */
  readonly registerDoubt?: string | undefined;
  readonly safeWorkingLoad?: string | undefined;
  readonly dependsOnConfiguration?: boolean | undefined;
  readonly configuration?: string | undefined;
  readonly firstAfterInstallation?: boolean | undefined;
  readonly installedCorrectly?: boolean | undefined;
  readonly occasion?: Occasion | undefined;
  readonly safeToOperate?: boolean | undefined;
  readonly defects?: readonly DraftDefect[] | undefined;
  readonly noDefect?: boolean | undefined;
  /** Left out, the latest day that the rules allow is taken. */
  readonly nextExaminationBy?: Day | undefined;
  readonly tests?: string | undefined;
  readonly noTest?: boolean | undefined;
  readonly examinedOn?: Day | undefined;
  readonly examinerAddress?: string | undefined;
  readonly examinerQualifications?: string | undefined;
  readonly selfEmployed?: boolean | undefined;
  readonly examinerEmployerName?: string | undefined;
  readonly examinerEmployerAddress?: string | undefined;
  readonly signerAddress?: string | undefined;
}

/** What is known of the item and the day, and who signs: nobody types it. */
export interface ReportFacts {
  readonly today: Day;
  /** The name of the account that signs: examiner and signer are the same person. */
  readonly examinerName: string;
  /** What the identification has to contain one of: the tag, the serial number. */
  readonly marks: readonly string[];
  /** The latest next day by the rules, for the day of this examination; absent when no rule gives one. */
  readonly latestNext?: Day;
  /** The last thorough examination before this one that the register has; absent when it has none. */
  readonly lastOnRecord?: ExaminationOnRecord;
}
