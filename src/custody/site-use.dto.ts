import { ArrayMaxSize, ArrayNotEmpty, IsArray, IsIn, IsInt, Max, Min } from 'class-validator';
import { DayText } from '../http/day-text.js';
import { MayBeLeftOut } from '../http/may-be-left-out.js';
import { PlainText } from '../http/plain-text.js';

const LIFTS = { message: 'write a whole number of lifts from 0 to 2000' };
const ITEMS = { message: 'name each item by its number' };

/** What can happen to the gear of a job on site, and calls for an examination of all of it. */
export const SHOCK_TYPES = ['dropped', 'overloaded'] as const;

/** How many lifts the gear of a job made on a day. */
export class LiftsDto {
  /** A day of the job, and not one to come. */
  @DayText()
  onDay!: string;

  /** A later count of the same day takes the place of an earlier one. */
  @IsInt(LIFTS)
  @Min(0, LIFTS)
  @Max(2000, LIFTS)
  lifts!: number;
}

/** A shock to the gear of a job. */
export class JobEventDto {
  @IsIn(SHOCK_TYPES, { message: `choose from ${SHOCK_TYPES.join(', ')}` })
  type!: (typeof SHOCK_TYPES)[number];

  @DayText()
  happenedOn!: string;

  @MayBeLeftOut()
  @PlainText({ most: 500, what: 'what happened', lines: true })
  remarks?: string;

  /** The items involved; everything that was out that day for lifting or lashing when left out. */
  @MayBeLeftOut()
  @IsArray({ message: 'write a list of item numbers' })
  @ArrayNotEmpty({ message: 'tick what was involved' })
  @ArrayMaxSize(1000)
  @IsInt({ each: true, ...ITEMS })
  @Min(1, { each: true, ...ITEMS })
  @Max(2_147_483_647, { each: true, ...ITEMS })
  itemIds?: number[];
}

/** The lifts of one day of a job. */
export class LiftDayView {
  onDay!: string;
  lifts!: number;
  recordedAt!: string;
}

/** The lifts of a job, by day as last counted. */
export class JobLiftsView {
  days!: LiftDayView[];
  total!: number;
}

/** An item that an event was recorded for. */
export class EventItemView {
  itemId!: number;
  tag!: string;
}

/** A job that a shock concerns. */
export class ShockedJobView {
  jobId!: number;
  reference!: string;
}

/** What a shock led to. */
export class JobEventView {
  /** Each must be examined before it is used again, where the rules of the place ask for that. */
  items!: EventItemView[];
  affectedJobs!: ShockedJobView[];
}
