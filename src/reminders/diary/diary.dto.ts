import { ApiProperty } from '@nestjs/swagger';
import { Type } from 'class-transformer';
import { IsInt, Max, Min } from 'class-validator';
import { MayBeLeftOut } from '../../http/may-be-left-out.js';
import { EVENT_TYPES, INSPECTION_TYPES, type InspectionType } from '../../rules/gear/gear.js';
import type { DueReason } from './diary-entry.js';

const WHO = ['inspector', 'competentPerson'] as const;
type Who = (typeof WHO)[number];

const WHY = ['inspection', 'neverExamined', 'event', 'liftsUsed', 'defectDeadline', 'failed'] as const;

/** What of the diary to read. */
export class DiaryQueryDto {
  /** The store whose gear is asked for; every store when left out. */
  @MayBeLeftOut()
  @Type(() => Number)
  @IsInt({ message: 'choose the store by its number' })
  @Min(1)
  @Max(2_000_000_000)
  storeId?: number;

  /** How many months ahead: 3 when left out. */
  @MayBeLeftOut()
  @Type(() => Number)
  @IsInt({ message: 'write a whole number from 1 to 12' })
  @Min(1, { message: 'write a whole number from 1 to 12' })
  @Max(12, { message: 'write a whole number from 1 to 12' })
  monthsAhead?: number;
}

/** One thing that makes an item due. */
export class DueReasonView {
  @ApiProperty({ enum: WHY })
  why!: DueReason['why'];
  @ApiProperty({ enum: INSPECTION_TYPES, required: false })
  type?: InspectionType;
  dueOn?: string;
  /** The key of the rule's source. */
  source?: string;
  @ApiProperty({ enum: EVENT_TYPES, required: false })
  event?: string;
}

/** A job that an item is promised to or out on. */
export class DiaryJobView {
  jobId!: number;
  reference!: string;
  from!: string;
  to!: string;
  out!: boolean;
}

/** An item that falls due. */
export class DiaryEntryView {
  itemId!: number;
  tag!: string;
  kind!: string;
  storeId!: number;
  storeName!: string;
  /** The store's today. */
  today!: string;
  /** In date through this day; of an item never examined, the day it was entered. */
  dueOn!: string;
  overdue!: boolean;
  @ApiProperty({ type: [DueReasonView] })
  reasons!: readonly DueReasonView[];
  /** Who may do all that is due. */
  @ApiProperty({ enum: WHO })
  who!: Who;
  @ApiProperty({ type: [DiaryJobView] })
  jobs!: readonly DiaryJobView[];
  /** Those of the jobs that it would stop. */
  @ApiProperty({ type: [DiaryJobView] })
  stops!: readonly DiaryJobView[];
}

/** A job in a few words. */
export class SavedJobView {
  jobId!: number;
  reference!: string;
}

/** A day on which one person at one store could examine many items in one go. */
export class VisitView {
  storeId!: number;
  storeName!: string;
  on!: string;
  @ApiProperty({ enum: WHO })
  who!: Who;
  /** All that it can clear, also what falls due after the last day that is looked at. */
  itemIds!: number[];
  /** The jobs that can go ahead once this is done. */
  savesJobs!: SavedJobView[];
}

/** How many items fall due in a week. */
export class WeekLoadView {
  monday!: string;
  count!: number;
}

/** What falls due, the visits that would clear it, and the weeks ahead. */
export class DiaryView {
  today!: string;
  /** The last day that is looked at. */
  through!: string;
  entries!: DiaryEntryView[];
  visits!: VisitView[];
  /** Items that no visit to their store reaches in time: out until they are due or longer. */
  notAtStore!: number[];
  /** How many of the entries may not be used before they are examined. */
  overdue!: number;
  /** How many items still in date fall due in the 26 weeks from this one on, whatever is asked for above. */
  weeks!: WeekLoadView[];
  /**
   * 0, or how many due days are being worked out again because the rules have changed. Until it is 0 again, an item
   * that falls due earlier than before may be missing here.
   */
  catchingUp!: number;
}
