import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import { Type } from 'class-transformer';
import {
  ArrayMaxSize,
  ArrayNotEmpty,
  ArrayUnique,
  IsArray,
  IsBoolean,
  IsIn,
  IsInt,
  Max,
  Min,
  ValidateIf,
} from 'class-validator';
import { MayBeLeftOut } from '../../http/may-be-left-out.js';
import { DIGEST_CHOICES, type DigestChoice } from '../../rules/reminders/digest-choice.js';
import { MailAddressText } from '../../mail-address.js';

const LARGEST_ID = 2_147_483_647;

/** What a person changes of their mail. What is left out stays as it is. */
export class ChangeMailChoiceDto {
  /** Where mail goes; null for nowhere. */
  @MayBeLeftOut()
  @MailAddressText()
  address?: string | null;

  /** How much of what falls due: each working day, once a week, only what is overdue, or nothing. */
  @ApiPropertyOptional({ enum: DIGEST_CHOICES })
  @MayBeLeftOut()
  @IsIn(DIGEST_CHOICES, { message: `choose from ${DIGEST_CHOICES.join(', ')}` })
  digest?: DigestChoice;

  /** Whether dangers and booked gear that turned unfit are told at once. */
  @MayBeLeftOut()
  @IsBoolean({ message: 'write true or false' })
  urgent?: boolean;

  /** The numbers of the stores to hear of; null for all of them. */
  @ApiPropertyOptional({ type: [Number], nullable: true })
  @ValidateIf((_, value) => value !== undefined && value !== null)
  @IsArray({ message: 'write a list of numbers of stores, or null for all' })
  @ArrayNotEmpty({ message: 'choose at least one store, or all' })
  @ArrayMaxSize(500, { message: 'choose at most 500 stores, or all' })
  @ArrayUnique({ message: 'name each store once' })
  @IsInt({ each: true, message: 'write whole numbers of stores' })
  @Min(1, { each: true, message: 'write whole numbers of stores' })
  @Max(LARGEST_ID, { each: true, message: 'write whole numbers of stores' })
  storeIds?: number[] | null;
}

/** The same from the page, with the version that its form was made from. */
export class MailChoiceFormDto extends ChangeMailChoiceDto {
  @Type(() => Number)
  @IsInt()
  @Min(0)
  @Max(1_000_000_000)
  version!: number;

  /** Absent where there is one store only. */
  @MayBeLeftOut()
  @IsIn(['all', 'some'], { message: 'choose every store, or only those that are ticked' })
  stores?: string;
}

/** What a person hears by mail. */
export class MailChoiceView {
  personId!: number;
  name!: string;
  /** Where mail goes; null while nobody gave an address. */
  @ApiProperty({ type: String, nullable: true })
  address!: string | null;
  @ApiProperty({ enum: DIGEST_CHOICES })
  digest!: DigestChoice;
  urgent!: boolean;
  /** Null for all stores. */
  @ApiProperty({ type: [Number], nullable: true })
  storeIds!: readonly number[] | null;
  version!: number;
}
