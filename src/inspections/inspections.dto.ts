import { ApiProperty } from '@nestjs/swagger';
import { IsBoolean, IsIn, IsInt, Max, Min } from 'class-validator';
import { DayText } from '../http/day-text.js';
import { MayBeLeftOut } from '../http/may-be-left-out.js';
import { PlainText } from '../http/plain-text.js';
import { EVENT_TYPES, INSPECTION_TYPES, type EventType, type InspectionType } from '../rules/gear/gear.js';
import type { Currency } from '../rules/due/due-date.js';
import { WorkingView } from '../http/rule-views.dto.js';
import { ItemView } from '../register/register.dto.js';
import { SEVERITIES, type Severity } from './severity.js';

export const OUTCOMES = ['fit', 'unfit'] as const;
export type Outcome = (typeof OUTCOMES)[number];

/** An inspection to record. */
export class NewInspectionDto {
  @IsIn(INSPECTION_TYPES, { message: `choose from ${INSPECTION_TYPES.join(', ')}` })
  type!: InspectionType;

  /** The day it was done. */
  @DayText()
  doneOn!: string;

  /** 'unfit' puts the item in quarantine at once. */
  @IsIn(OUTCOMES, { message: `choose from ${OUTCOMES.join(', ')}` })
  outcome!: Outcome;

  /** The last day the examiner allows before the next one: it can only bring the due day forward. */
  @MayBeLeftOut()
  @DayText()
  nextDueOn?: string;

  /** Who did it, as on the report; the one who records it when left out, where they may do it themselves. */
  @MayBeLeftOut()
  @PlainText({ most: 120, what: 'who did it, as on the report' })
  doneBy?: string;

  /**
   * The number of the report, which is then on file. A thorough examination passed without it leaves the item without a
   * report on file, until a correction of the record names the number or its certificate is added.
   */
  @MayBeLeftOut()
  @PlainText({ most: 60, what: 'the number of the report' })
  reportNumber?: string;

  @MayBeLeftOut()
  @PlainText({ most: 1000, what: 'what was found', lines: true })
  remarks?: string;

  /** The record that this one corrects. It stays in the history and counts no more. */
  @MayBeLeftOut()
  @IsInt({ message: 'name the record by its number' })
  @Min(1, { message: 'name the record by its number' })
  @Max(2_147_483_647, { message: 'name the record by its number' })
  supersedesId?: number;

  /** With a thorough examination passed: ends quarantine or repair and closes the open defects. */
  @MayBeLeftOut()
  @IsBoolean()
  release?: boolean;
}

/** A defect to report. */
export class NewDefectDto {
  /** `immediateDanger` puts the item in quarantine at once. */
  @IsIn(SEVERITIES, { message: `choose from ${SEVERITIES.join(', ')}` })
  severity!: Severity;

  @PlainText({ most: 500, what: 'what is wrong and where on the item', lines: true })
  description!: string;

  /** The last day of use, for a danger by a date only. */
  @MayBeLeftOut()
  @DayText()
  lastDayOfUse?: string;
}

/** Why the item is taken out of service or sent to repair. */
export class ReasonDto {
  @PlainText({ most: 500, what: 'why', lines: true })
  reason!: string;
}

/** Why an item is scrapped, and how it was made certain that nobody uses it again. */
export class ScrapDto {
  @PlainText({ most: 250, what: 'why it is scrapped', lines: true })
  reason!: string;

  /** Such as cut through, crushed, or handed to a named scrap dealer against a receipt. */
  @PlainText({ most: 240, what: 'how it was made unusable', lines: true })
  howMadeUnusable!: string;
}

/** Something that happened to an item. */
export class NewEventDto {
  @IsIn(EVENT_TYPES, { message: `choose from ${EVENT_TYPES.join(', ')}` })
  type!: EventType;

  @DayText()
  happenedOn!: string;

  @MayBeLeftOut()
  @PlainText({ most: 500, what: 'what happened', lines: true })
  remarks?: string;
}

/** A job that the change concerns: the item is promised to it. */
export class AffectedJobView {
  jobId!: number;
  reference!: string;
  from!: string;
  to!: string;
}

/** The item after a change, and the jobs that have to look for other gear because of it. */
export class ItemOutcomeView {
  item!: ItemView;
  affectedJobs!: AffectedJobView[];
}

/** An inspection as recorded. */
export class InspectionView {
  id!: number;
  type!: InspectionType;
  doneOn!: string;
  outcome!: Outcome;
  nextDueOn!: string | null;
  doneBy!: string;
  reportNumber!: string | null;
  remarks!: string;
  supersedesId!: number | null;
  /** True when a later record corrects it: it counts no more. */
  superseded!: boolean;
  /** The report of thorough examination that was signed here; null of a record without one. */
  examinationId!: number | null;
  recordedAt!: string;
}

/** A defect as reported. */
export class DefectView {
  id!: number;
  severity!: Severity;
  description!: string;
  lastDayOfUse!: string | null;
  recordedAt!: string;
  /** The examination that passed the item afterwards; null while the defect is open. */
  closedByInspectionId!: number | null;
}

/** Something that happened, as reported. */
export class EventView {
  id!: number;
  type!: EventType;
  happenedOn!: string;
  remarks!: string;
  recordedAt!: string;
}

/** A line of an item's history. */
export class HistoryLineView {
  number!: number;
  at!: string;
  actorName!: string;
  action!: string;
  /** What it was done with. */
  @ApiProperty({ type: Object, additionalProperties: true })
  detail!: unknown;
}

/** One inspection asked of an item, and how its due day came about. */
export class InspectionDueView {
  type!: InspectionType;
  lastDoneOn?: string;
  dueOn?: string;
  neverExamined!: boolean;
  @ApiProperty({ type: [Object], description: 'Each step: title, formula, inputs, result, source.' })
  @ApiProperty({ type: [WorkingView] })
  workings!: readonly WorkingView[];
}

/** Where an item stands with its dates today, by the rules of its store. */
export class DueView {
  today!: string;
  currency!: Currency;
  dueOn?: string;
  inspections!: InspectionDueView[];
  defectDeadline?: string;
  cautions!: string[];
}
