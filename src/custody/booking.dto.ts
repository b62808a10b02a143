import { applyDecorators } from '@nestjs/common';
import { ApiProperty } from '@nestjs/swagger';
import { Type } from 'class-transformer';
import { IsIn, IsInt, Max, Min } from 'class-validator';
import { MayBeLeftOut } from '../http/may-be-left-out.js';
import { PlainText } from '../http/plain-text.js';
import { RefusalView } from '../http/rule-views.dto.js';
import { TagText } from '../http/tag-text.js';
import { BOOKED_STATES, type BookedState } from './booked-item.entity.js';

const TAG = { what: 'the tag of the item' };

/** A field that holds the number of a row, which is no greater than the database counts. */
function IsRowNumber(message: string): PropertyDecorator {
  return applyDecorators(IsInt({ message }), Min(1, { message }), Max(2_147_483_647, { message }));
}

/** An item that goes out of the store. */
export class HandOutDto {
  @TagText(TAG)
  tag!: string;

  /** The booked item that this one takes the place of. */
  @MayBeLeftOut()
  @IsRowNumber('say which booked item')
  insteadOf?: number;
}

/** How an item came back. */
export const RETURN_CONDITIONS = ['good', 'damaged', 'missing'] as const;
export type ReturnCondition = (typeof RETURN_CONDITIONS)[number];

/** An item that comes back, or does not. */
export class ReturnDto {
  @TagText(TAG)
  tag!: string;

  @IsIn(RETURN_CONDITIONS, { message: 'choose good, damaged or missing' })
  condition!: ReturnCondition;

  /** What was seen; needed for damage. */
  @MayBeLeftOut()
  @PlainText({ most: 480, what: 'what was seen', lines: true })
  remarks?: string;
}

/** Which promise to give up. */
export class ReleaseDto {
  @IsRowNumber('say which booked item')
  bookedItemId!: number;
}

/** One item promised to a job. */
export class BookedItemView {
  id!: number;
  itemId!: number;
  tag!: string;
  kind!: string;
  storeName!: string;
  lineKey!: string;
  fromDay!: string;
  toDay!: string;
  @IsIn(BOOKED_STATES)
  state!: BookedState;
  returnRemarks!: string | null;
}

/** What a reservation did. */
export class ReservationView {
  /** Tags that were promised to the job. */
  reserved!: string[];
  /** Tags that were given up, because they are unfit or no longer needed. */
  released!: string[];
  /** Items that the job still lacks. */
  missing!: number;
}

/** An item that could be taken. */
export class ProposedItemView {
  itemId!: number;
  tag!: string;
  storeName!: string;
}

/** A booked item that is not fit any more. */
export class UnfitItemView {
  item!: BookedItemView;
  lineLabel!: string;
  /** Every reason, with codes and figures. */
  @ApiProperty({ type: [RefusalView] })
  refusals!: readonly RefusalView[];
  /** The item to take instead, where there is one. */
  replacement?: ProposedItemView;
}

/** A line that lacks gear though the job has booked some. */
export class ShortLineView {
  lineKey!: string;
  label!: string;
  missing!: number;
  /** Items that could be reserved for it. */
  proposed!: ProposedItemView[];
}

/** What a job has booked, asked again as of now. */
export class BookingView {
  items!: BookedItemView[];
  /** Items that the job needs in all. */
  needed!: number;
  unfit!: UnfitItemView[];
  /** Reserved, but not needed any more. */
  surplus!: BookedItemView[];
  shortLines!: ShortLineView[];
}

/** The missing item that turned up, as a page sends it. */
export class FoundFormDto {
  @Type(() => Number)
  @IsRowNumber('say which item')
  itemId!: number;
}
