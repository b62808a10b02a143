import { PartialType } from '@nestjs/swagger';
import { Type } from 'class-transformer';
import {
  ArrayMaxSize,
  ArrayNotEmpty,
  IsArray,
  IsBoolean,
  IsIn,
  IsInt,
  IsObject,
  IsString,
  Length,
  Matches,
  Max,
  MaxLength,
  Min,
  ValidateNested,
} from 'class-validator';
import { MayBeLeftOut } from '../http/may-be-left-out.js';
import { DayText } from '../http/day-text.js';
import { PlainText } from '../http/plain-text.js';
import { TagText } from '../http/tag-text.js';
import {
  AddedLineDto,
  JobCountsDto,
  LineAdjustmentDto,
  PanelRowDto,
  StatedParameterDto,
} from './job-parts.dto.js';

/** The most lines of a panel schedule. */
export const MOST_PANEL_LINES = 500;

const TRUCK_TIME = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/;
const STORE_ID = { message: 'choose the store the truck loads at' };

/** A new job. */
export class NewJobDto {
  /** The company's own job number. */
  @PlainText({ most: 40, what: 'the job number' })
  reference!: string;

  @PlainText({ most: 120, what: 'what the job is called' })
  name!: string;

  @PlainText({ most: 200, what: 'where the site is' })
  site!: string;

  /** The place whose inspection rules hold at the site. */
  @IsString()
  @Length(1, 20, { message: 'choose the place whose inspection rules hold' })
  scheme!: string;

  /** How the panels are installed. */
  @IsString()
  @Length(1, 40, { message: 'choose how the panels are installed' })
  method!: string;

  /** The store the truck loads at. */
  @IsInt(STORE_ID)
  @Min(1, STORE_ID)
  @Max(2_147_483_647, STORE_ID)
  storeId!: number;

  @DayText()
  loadOutDay!: string;

  @DayText()
  backDay!: string;

  /** Whether gear may come from other stores too. */
  @IsBoolean({ message: 'say whether gear may come from other stores' })
  otherStores!: boolean;

  @Type(() => JobCountsDto)
  @IsObject({ message: 'write its fields by name' })
  @ValidateNested()
  counts!: JobCountsDto;

  @IsArray({ message: 'list the panels' })
  @ArrayNotEmpty({ message: 'list at least one panel; a job of none needs no gear' })
  @ArrayMaxSize(MOST_PANEL_LINES, {
    message: `list at most ${MOST_PANEL_LINES} lines; put equal panels on one`,
  })
  @Type(() => PanelRowDto)
  @ValidateNested({ each: true })
  panels!: PanelRowDto[];

  @MayBeLeftOut()
  @IsArray()
  @ArrayMaxSize(100)
  @Type(() => LineAdjustmentDto)
  @ValidateNested({ each: true })
  adjustments?: LineAdjustmentDto[];

  @MayBeLeftOut()
  @IsArray()
  @ArrayMaxSize(100)
  @Type(() => AddedLineDto)
  @ValidateNested({ each: true })
  addedLines?: AddedLineDto[];

  /** Figures of the method that the job states for itself, such as the mass of the lifter. */
  @MayBeLeftOut()
  @IsArray()
  @ArrayMaxSize(100)
  @Type(() => StatedParameterDto)
  @ValidateNested({ each: true })
  parameters?: StatedParameterDto[];

  /** When trucks are ordered to arrive, in the time of the site, in order: `2026-12-01T08:30`. */
  @MayBeLeftOut()
  @IsArray()
  @ArrayMaxSize(200, { message: 'order at most 200 trucks' })
  @Matches(TRUCK_TIME, { each: true, message: 'write each as a day and a time, such as 2026-12-01T08:30' })
  truckTimes?: string[];
}

/** A change to a job. What is left out stays as it is. */
export class ChangeJobDto extends PartialType(NewJobDto, { skipNullProperties: false }) {}

/** A panel schedule as text, with units in the headings. */
export class PanelsCsvDto {
  @IsString()
  @Length(1, 500_000, { message: 'paste the table with its heading line' })
  csv!: string;
}

/** The storeman's word on one item. */
export class GearChoiceDto {
  @IsInt({ message: 'name the item by its number' })
  @Min(1, { message: 'name the item by its number' })
  @Max(2_147_483_647, { message: 'name the item by its number' })
  itemId!: number;

  @IsIn(['pin', 'exclude', 'none'], { message: 'choose pin, exclude or none' })
  choice!: 'pin' | 'exclude' | 'none';

  /** The line to use it on; needed for a pin. */
  @MayBeLeftOut()
  @PlainText({ most: 60, what: 'the key of a line' })
  lineKey?: string;

  /** Needed unless the choice is taken back. */
  @MayBeLeftOut()
  @PlainText({ most: 300, what: 'why' })
  reason?: string;
}

/** Which jobs to list. */
export class JobsQueryDto {
  /** Where the last page ended, as `next` gave it. */
  @MayBeLeftOut()
  @IsString()
  @MaxLength(80)
  after?: string;

  @MayBeLeftOut()
  @Type(() => Number)
  @IsInt()
  @Min(1)
  @Max(100)
  limit?: number;
}

/** A job as others see it. */
export class JobView {
  id!: number;
  reference!: string;
  name!: string;
  site!: string;
  scheme!: string;
  method!: string;
  storeId!: number;
  storeName!: string;
  loadOutDay!: string;
  backDay!: string;
  otherStores!: boolean;
  counts!: JobCountsDto;
  panels!: PanelRowDto[];
  parameters!: StatedParameterDto[];
  truckTimes!: string[];
  adjustments!: LineAdjustmentDto[];
  addedLines!: AddedLineDto[];
  choices!: GearChoiceDto[];
  cancelled!: boolean;
  version!: number;
  /** What to look at twice. */
  warnings!: string[];
}

/** How far a job's gear has come. */
export const JOB_STATES = ['planned', 'reserved', 'out', 'back', 'cancelled'] as const;
export type JobState = (typeof JOB_STATES)[number];

/** A job on the list. */
export class JobSummaryView {
  id!: number;
  reference!: string;
  name!: string;
  site!: string;
  loadOutDay!: string;
  backDay!: string;
  storeName!: string;
  @IsIn(JOB_STATES)
  state!: JobState;
  /** Items reserved or out. */
  booked!: number;
  /** Items the job needs in all. */
  needed!: number;
  /** Booked items that are no longer fit, no longer needed, and lines that are short though gear is booked. */
  flagged!: number;
}

/** A page of jobs: those still to come back first, by load-out day; then the past ones, latest first. */
export class JobListView {
  jobs!: JobSummaryView[];
  /** Hand this over as `after` for the next page; absent on the last. */
  next?: string;
}

/** A job's form, with the version of the job that it was made from. */
export class EditJobFormDto extends ChangeJobDto {
  @Type(() => Number)
  @IsInt()
  @Min(1)
  @Max(1_000_000_000)
  version!: number;
}

/** The version of the job that a page's button was made from. */
export class JobVersionFormDto {
  @Type(() => Number)
  @IsInt()
  @Min(1)
  @Max(1_000_000_000)
  version!: number;
}

/** The storeman's word on one item as a page sends it: by the item's number, or by the tag that was typed. */
export class GearChoiceFormDto extends JobVersionFormDto {
  @MayBeLeftOut()
  @IsInt({ message: 'name the item by its number' })
  @Min(1, { message: 'name the item by its number' })
  @Max(2_147_483_647, { message: 'name the item by its number' })
  itemId?: number;

  @MayBeLeftOut()
  @TagText({ what: 'the tag of the item' })
  tag?: string;

  @IsIn(['pin', 'exclude', 'none'], { message: 'choose pin, exclude or none' })
  choice!: 'pin' | 'exclude' | 'none';

  @MayBeLeftOut()
  @PlainText({ most: 60, what: 'the key of a line' })
  lineKey?: string;

  @MayBeLeftOut()
  @PlainText({ most: 300, what: 'why' })
  reason?: string;
}

/** The version of the job that an uploaded schedule is for; a file's form carries it in its address. */
export class ScheduleQueryDto extends JobVersionFormDto {}
