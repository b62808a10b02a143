import { ApiProperty } from '@nestjs/swagger';
import { Transform, Type } from 'class-transformer';
import {
  ArrayMaxSize,
  IsArray,
  IsBoolean,
  IsIn,
  IsInt,
  IsObject,
  IsOptional,
  Max,
  Min,
  ValidateNested,
} from 'class-validator';
import { DayText } from '../http/day-text.js';
import { DecimalText } from '../http/decimal-text.js';
import { MayBeLeftOut } from '../http/may-be-left-out.js';
import { PlainText } from '../http/plain-text.js';
import type { Currency } from '../rules/due/due-date.js';
import type { Condition } from '../rules/gear/gear.js';
import { Exact } from '../rules/quantities/exact.js';
import { MEASURES, type Measure } from '../rules/quantities/marking.js';
import { LoadChartDto } from './load-chart.dto.js';

/** Inspections that an item can have an interval of its own for. */
export const INTERVAL_TYPES = ['interimInspection', 'thoroughExamination', 'proofLoadTest'] as const;

const STORE_ID = { message: 'choose the store by its number' };
const TAG = { most: 40, what: "the company's own mark on the item" };
const SERIAL = { most: 60, what: 'the serial number as the plate shows it' };
const MAKER = { most: 80, what: 'the maker as the plate names it' };
const BATCH = { most: 60, what: "the maker's batch or lot, as on the plate or the certificate" };
const KIND = { most: 40, what: 'the kind of gear' };
const OWNER = { most: 120, what: 'whose it is' };
const NOTES = { most: 1000, what: 'what else there is to know', lines: true };

/** A rating as stamped on the item. */
export class MarkingDto {
  @IsIn(MEASURES, { message: `choose from ${MEASURES.join(', ')}` })
  measure!: Measure;

  @DecimalText({ above: '0', atMost: '1000000000', what: 'the rating as marked' })
  value!: string;

  /** The unit as stamped: one that the kind is marked in. */
  @PlainText({ most: 10, what: 'the unit as marked' })
  unit!: string;

  /** The condition the mark holds under, as stamped. */
  @MayBeLeftOut()
  @PlainText({ most: 80, what: 'the condition as marked' })
  condition?: string;
}

/** Other months between inspections of one type for this item alone. */
export class WrittenSchemeDto {
  @IsIn(INTERVAL_TYPES, { message: `choose from ${INTERVAL_TYPES.join(', ')}` })
  type!: (typeof INTERVAL_TYPES)[number];

  @IsInt({ message: 'write whole months from 1 to 120' })
  @Min(1, { message: 'write whole months from 1 to 120' })
  @Max(120, { message: 'write whole months from 1 to 120' })
  months!: number;

  /** The scheme of examination a competent person drew up: needed to lengthen an interval. */
  @MayBeLeftOut()
  @PlainText({ most: 60, what: 'the reference of the scheme of examination' })
  reference?: string;
}

/** What is known of an item besides what it is and where it belongs. */
export class ItemDetailsDto {
  @IsOptional()
  @PlainText(SERIAL)
  serial?: string | null;

  /** True when the plate cannot be read: the item is registered, and refused for every duty. */
  @MayBeLeftOut()
  @IsBoolean()
  serialUnknown?: boolean;

  /** True to save a serial number that looks almost like another of the same maker. */
  @MayBeLeftOut()
  @IsBoolean()
  acceptLookAlike?: boolean;

  /** The maker's batch or lot: what is wrong with one item of it may be wrong with all. */
  @IsOptional()
  @PlainText(BATCH)
  batch?: string | null;

  @MayBeLeftOut()
  @IsBoolean()
  labelLegible?: boolean;

  @MayBeLeftOut()
  @IsBoolean()
  certificateOnFile?: boolean;

  @MayBeLeftOut()
  @IsArray()
  @ArrayMaxSize(20)
  @ValidateNested({ each: true })
  @Type(() => MarkingDto)
  markings?: MarkingDto[];

  /** Measured attributes by name, in the unit the name ends in, as decimal text. */
  @MayBeLeftOut()
  @IsObject({ message: 'write the dimensions by name' })
  @Transform(({ value }: { value: unknown }) => withDecimalText(value))
  @ApiProperty({ type: Object, additionalProperties: { type: 'string' }, example: { lengthM: '6' } })
  dimensions?: Record<string, string>;

  /** Whose it is, for gear that is hired in. */
  @IsOptional()
  @PlainText(OWNER)
  owner?: string | null;

  /** The first day of the hire. */
  @IsOptional()
  @DayText()
  hiredFrom?: string | null;

  /** The last day of the hire: by its end the item is back with its owner. */
  @IsOptional()
  @DayText()
  hiredTo?: string | null;

  /** For kinds that carry by a load chart. */
  @IsOptional()
  @IsObject({ message: 'write the load chart as an object' })
  @ValidateNested()
  @Type(() => LoadChartDto)
  loadChart?: LoadChartDto | null;

  @IsOptional()
  @DayText()
  manufacturedOn?: string | null;

  @IsOptional()
  @DayText()
  firstUsedOn?: string | null;

  /** The day of the maker's declaration of conformity, for gear bought new. */
  @IsOptional()
  @DayText()
  declarationOn?: string | null;

  @MayBeLeftOut()
  @IsArray()
  @ArrayMaxSize(5)
  @ValidateNested({ each: true })
  @Type(() => WrittenSchemeDto)
  writtenSchemes?: WrittenSchemeDto[];

  @IsOptional()
  @PlainText(NOTES)
  notes?: string | null;
}

/** An item that enters the register, in service. */
export class NewItemDto extends ItemDetailsDto {
  @PlainText(TAG)
  tag!: string;

  @PlainText(KIND)
  kind!: string;

  @IsInt(STORE_ID)
  @Min(1, STORE_ID)
  @Max(2_000_000_000, STORE_ID)
  storeId!: number;

  @PlainText(MAKER)
  maker!: string;
}

/** A change to an item. What is left out stays as it is; null clears a day, the batch, the owner, the load chart, the notes or the serial number. */
export class ChangeItemDto extends ItemDetailsDto {
  @MayBeLeftOut()
  @PlainText(TAG)
  tag?: string;

  @MayBeLeftOut()
  @PlainText(KIND)
  kind?: string;

  @MayBeLeftOut()
  @IsInt(STORE_ID)
  @Min(1, STORE_ID)
  @Max(2_000_000_000, STORE_ID)
  storeId?: number;

  @MayBeLeftOut()
  @PlainText(MAKER)
  maker?: string;
}

/** What a page's form sends: the change and the version it was made from. */
export class ChangeItemFormDto extends ChangeItemDto {
  @Type(() => Number)
  @IsInt()
  @Min(1)
  @Max(1_000_000_000)
  version!: number;
}

/** Where an item is. */
export class CustodyView {
  state!: 'inStore' | 'reserved' | 'out' | 'missing';
  /** The job it is out on, or reserved for next. */
  jobReference?: string;
  from?: string;
  to?: string;
  /** Out past its day and not back. */
  late?: boolean;
}

/** An item in a list. */
export class ItemRowView {
  id!: number;
  tag!: string;
  kind!: string;
  maker!: string;
  serial!: string | null;
  storeId!: number;
  storeName!: string;
  condition!: Condition;
  markings!: MarkingDto[];
  /** How it stands with its dates today: computed, not kept. */
  currency!: Currency;
  /** The last day it is in date. */
  dueOn?: string;
  custody!: CustodyView;
}

/** An item with everything the register keeps of it. */
export class ItemView extends ItemRowView {
  conditionReason!: string | null;
  /** The day it was taken out of service. */
  conditionSince!: string | null;
  labelLegible!: boolean;
  certificateOnFile!: boolean;
  @ApiProperty({ type: Object, additionalProperties: { type: 'string' } })
  dimensions!: Record<string, string>;
  batch!: string | null;
  owner!: string | null;
  hiredFrom!: string | null;
  hiredTo!: string | null;
  loadChart!: LoadChartDto | null;
  manufacturedOn!: string | null;
  firstUsedOn!: string | null;
  declarationOn!: string | null;
  writtenSchemes!: WrittenSchemeDto[];
  notes!: string;
  version!: number;
}

function withDecimalText(value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  const asText = (size: unknown) =>
    typeof size === 'number' && Number.isFinite(size) ? Exact.of(size).toString() : size;
  return Object.fromEntries(Object.entries(value).map(([name, size]) => [name, asText(size)]));
}
