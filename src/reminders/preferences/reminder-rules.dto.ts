import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import { Type } from 'class-transformer';
import { ArrayMaxSize, IsArray, IsInt, IsNumber, IsString, Max, MaxLength, Min } from 'class-validator';
import { MayBeLeftOut } from '../../http/may-be-left-out.js';

/** More than any rule holds: what is right and wrong inside the lists is for the rule to say. */
const MOST = 1_000;
const NUMBERS = { each: true, message: 'write a list of whole numbers' };
const DAYS = { each: true, message: 'write a list of days as YYYY-MM-DD' };
const NOT_SO_MANY = { message: 'is far too long a list' };

/** A change to when a store wants to hear of what falls due. What is left out stays as it is. */
export class ChangeReminderRuleDto {
  /** The days of the week on which the store works, as ISO 8601 numbers them: 1 is Monday. */
  @ApiPropertyOptional({ type: [Number], example: [1, 2, 3, 4, 5] })
  @MayBeLeftOut()
  @IsArray({ message: NUMBERS.message })
  @ArrayMaxSize(MOST, NOT_SO_MANY)
  @IsNumber({}, NUMBERS)
  workDays?: number[];

  /** Days on which it does not work all the same, as `YYYY-MM-DD`; at most 200. */
  @ApiPropertyOptional({ type: [String], example: ['2026-12-25'] })
  @MayBeLeftOut()
  @IsArray({ message: DAYS.message })
  @ArrayMaxSize(MOST, NOT_SO_MANY)
  @IsString(DAYS)
  @MaxLength(40, DAYS)
  holidays?: string[];

  /** So many days before a due day it is told, each once; 1 to 8 of them, from 1 to 365. */
  @ApiPropertyOptional({ type: [Number], example: [30, 14, 7, 1] })
  @MayBeLeftOut()
  @IsArray({ message: NUMBERS.message })
  @ArrayMaxSize(MOST, NOT_SO_MANY)
  @IsNumber({}, NUMBERS)
  leadDays?: number[];

  /** The time of the store's day at which daily mail is made, from 00:00 to 23:59. */
  @ApiPropertyOptional({ example: '06:00' })
  @MayBeLeftOut()
  @IsString({ message: 'write a time of day such as 06:00' })
  @MaxLength(40, { message: 'write a time of day such as 06:00' })
  digestTime?: string;
}

/** The same from the page, with the version that its form was made from. */
export class ReminderRuleFormDto extends ChangeReminderRuleDto {
  @Type(() => Number)
  @IsInt()
  @Min(0)
  @Max(1_000_000_000)
  version!: number;
}

/** When a store works and how early it wants to hear. */
export class ReminderRuleView {
  storeId!: number;
  /** ISO 8601 days of the week. */
  @ApiProperty({ type: [Number] })
  workDays!: readonly number[];
  /** As `YYYY-MM-DD`, in their order. */
  @ApiProperty({ type: [String] })
  holidays!: readonly string[];
  /** Days before a due day, the longest first. */
  @ApiProperty({ type: [Number] })
  leadDays!: readonly number[];
  digestTime!: string;
  /** 0 while the store goes by the defaults. */
  version!: number;
}
