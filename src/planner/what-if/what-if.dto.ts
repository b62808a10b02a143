import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import { RefusalView } from '../../http/rule-views.dto.js';
import { DUTIES, type Duty } from '../../rules/gear/gear.js';
import { DimensionNeedView, RatingNeedView } from '../planner.dto.js';
import { HELD_STATES } from './compare-bookings.js';
import { ITEM_CHANGES, LEAVING_REASONS } from './compare-items.js';
import { LINE_CHANGES, type LineChange } from './compare-lines.js';

/** What a gear line asks for, and how many of it no gear is fit and free for. */
export class LineStandView {
  readonly kind!: string;
  @ApiProperty({ enum: DUTIES })
  readonly duty!: Duty;
  readonly quantity!: number;
  readonly rating?: RatingNeedView;
  @ApiProperty({ type: [DimensionNeedView] })
  readonly dimensions!: readonly DimensionNeedView[];
  readonly missing!: number;
}

/** A gear line that the change changes. */
export class LineDifferenceView {
  readonly key!: string;
  readonly label!: string;
  @ApiProperty({ enum: LINE_CHANGES, isArray: true })
  readonly changes!: readonly LineChange[];
  /** Absent of a line that comes. */
  readonly before?: LineStandView;
  /** Absent of a line that goes. */
  readonly after?: LineStandView;
}

/** A line by its key, with the name that people read. */
export class LineNameView {
  readonly key!: string;
  readonly label!: string;
}

/** An item that the plan takes up, gives up or puts on another line. */
export class ItemDifferenceView {
  readonly itemId!: number;
  readonly tag!: string;
  readonly storeName!: string;
  @ApiProperty({ enum: ITEM_CHANGES })
  readonly change!: (typeof ITEM_CHANGES)[number];
  /** The line it is on as the job stands. */
  readonly before?: LineNameView;
  /** The line it would be on. */
  readonly after?: LineNameView;
  /** Why an item leaves. */
  @ApiPropertyOptional({ enum: LEAVING_REASONS })
  readonly reason?: (typeof LEAVING_REASONS)[number];
  /** Every reason why an item that leaves may not serve its line any more. */
  @ApiProperty({ type: [RefusalView] })
  readonly refusals!: readonly RefusalView[];
}

/** Something reserved for the job or out on it. */
export class HeldItemNameView {
  readonly itemId!: number;
  readonly tag!: string;
  @ApiProperty({ enum: HELD_STATES })
  readonly state!: (typeof HELD_STATES)[number];
  readonly lineKey!: string;
}

/** Something booked that would not be fit for its line, or not for other reasons than now. */
export class UnfitHeldItemView extends HeldItemNameView {
  readonly lineLabel!: string;
  /** True when it is unfit already as the job stands. */
  readonly already!: boolean;
  /** Every reason after the change. */
  @ApiProperty({ type: [RefusalView] })
  readonly refusals!: readonly RefusalView[];
}

/** What the change would flag of what is booked. */
export class BookingDifferenceView {
  @ApiProperty({ type: [UnfitHeldItemView] })
  readonly unfit!: readonly UnfitHeldItemView[];
  /** Reserved, and needed now but not after the change. */
  @ApiProperty({ type: [HeldItemNameView] })
  readonly surplus!: readonly HeldItemNameView[];
}

/** What a change of a job would do to its gear lines, the gear chosen and the booking. Only what differs is listed. */
export class WhatIfView {
  readonly jobId!: number;
  /** The version that the change was compared with. */
  readonly jobVersion!: number;
  /** The day it was worked out on, at the store of the changed job. */
  readonly today!: string;
  readonly nothingChanges!: boolean;
  @ApiProperty({ type: [LineDifferenceView] })
  readonly lines!: readonly LineDifferenceView[];
  @ApiProperty({ type: [ItemDifferenceView] })
  readonly items!: readonly ItemDifferenceView[];
  readonly booking!: BookingDifferenceView;
}
