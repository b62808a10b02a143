import { ApiProperty } from '@nestjs/swagger';
import { Type } from 'class-transformer';
import { ArrayMaxSize, IsArray, IsIn, IsInt, Max, Min, ValidateNested } from 'class-validator';
import { DayText } from '../http/day-text.js';
import { InstantText } from '../http/instant-text.js';
import { MayBeLeftOut } from '../http/may-be-left-out.js';
import { PlainText } from '../http/plain-text.js';
import { WorkingView } from '../http/rule-views.dto.js';
import { AffectedJobView, type Outcome } from '../inspections/inspections.dto.js';
import type { CheckAnswer } from '../rules/checks/checklist.js';
import type { Finding } from '../rules/checks/judge-check.js';
import type { Condition } from '../rules/gear/gear.js';
import { CheckFigures } from './check-figures.js';

/** What was answered to one point of the checklist. */
export class CheckAnswerDto {
  /** Key of the point. */
  @PlainText({ most: 40, what: 'the key of the point' })
  point!: string;

  @IsIn(['good', 'bad'], { message: 'choose good or bad' })
  answer!: 'good' | 'bad';

  /** What was measured, by the names of the checklist. */
  @MayBeLeftOut()
  @CheckFigures()
  figures?: NonNullable<CheckAnswer['figures']>;

  @MayBeLeftOut()
  @PlainText({ most: 300, what: 'what was seen', lines: true })
  remarks?: string;
}

/** A check before use of one item, as its user made it. Every point of the checklist is answered. */
export class NewCheckDto {
  /** The job on which it was made; left out for a check in the store. */
  @MayBeLeftOut()
  @IsInt({ message: 'name the job by its number' })
  @Min(1, { message: 'name the job by its number' })
  @Max(2_147_483_647, { message: 'name the job by its number' })
  jobId?: number;

  /** The moment of the check by the clock of the device. */
  @InstantText()
  checkedAt!: string;

  /** How far the clock of the device stands from UTC, east positive. Kept with the record; the store's zone decides the day. */
  @IsInt({ message: 'give the offset from UTC in whole minutes' })
  @Min(-1080, { message: 'is beyond any time zone' })
  @Max(1080, { message: 'is beyond any time zone' })
  offsetMinutes!: number;

  @IsArray({ message: 'answer every point of the checklist' })
  @ArrayMaxSize(60, { message: 'are more than any checklist has' })
  @ValidateNested({ each: true })
  @Type(() => CheckAnswerDto)
  answers!: CheckAnswerDto[];
}

/** What came of one point. */
export class FindingView implements Finding {
  /** Key of the point. */
  readonly point!: string;
  readonly severity!: Finding['severity'];
  readonly failed!: boolean;
  /** One for each criterion whose figures were entered. */
  @ApiProperty({ type: [WorkingView] })
  readonly workings!: readonly WorkingView[];
  readonly remarks?: string;
}

/** A defect that a failed point left, so that a photo can be kept with it. */
export class CheckDefectView {
  id!: number;
  /** Key of the point. */
  point!: string;
}

export const CONFLICT_CODES = [
  'already_quarantined',
  'under_repair',
  'job_cancelled',
  'left_job',
  'not_on_job',
] as const;
export type ConflictCode = (typeof CONFLICT_CODES)[number];

/** What the one who made the check did not know. The check is kept all the same. */
export class CheckConflictView {
  /** `left_job`: it was on the job and came back, went missing or was given up; `not_on_job`: it never was. */
  @ApiProperty({ enum: CONFLICT_CODES })
  code!: ConflictCode;
  /** When it was taken out of service. */
  at?: string;
  /** Who took it out of service. */
  by?: string;
}

/** A check as it was kept, and what followed from it at once. */
export class CheckOutcomeView {
  inspectionId!: number;
  /** 'unfit' when any point failed: it is not to be used. */
  outcome!: Outcome;
  findings!: FindingView[];
  defects!: CheckDefectView[];
  itemCondition!: Condition;
  /** The day at the store or site that the check counts for; null when the clock is in doubt: then it counts for none. */
  countsFor!: string | null;
  /** True when the clock of the device cannot be right, or the check waited too long to be sure. */
  clockDoubtful!: boolean;
  /** What to do now, where the check does not count: check the gear again. */
  advice?: string;
  /** The jobs that have to look for other gear because of it. */
  affectedJobs!: AffectedJobView[];
  conflict?: CheckConflictView;
}

/** Which day is asked for. */
export class CoverageQueryDto {
  @MayBeLeftOut()
  @DayText()
  day?: string;
}
