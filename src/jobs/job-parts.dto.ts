import { ApiPropertyOptional } from '@nestjs/swagger';
import { Type } from 'class-transformer';
import { IsIn, IsInt, IsObject, IsString, Length, Matches, Max, Min, ValidateNested } from 'class-validator';
import { MayBeLeftOut } from '../http/may-be-left-out.js';
import { DecimalText } from '../http/decimal-text.js';
import { PlainText } from '../http/plain-text.js';
import { DUTIES, type Duty } from '../rules/gear/gear.js';

const COUNT = { message: 'write a whole number from 0 to 1000' };
/** The largest whole number that the database counts to. The rules draw the narrower limits. */
const LARGEST_COUNT = 2_147_483_647;
const REASON = { most: 300, what: 'why, so that others understand the change' };

/** How much of everything a job has at work at one time. */
export class JobCountsDto {
  @IsInt({ message: 'write a whole number from 1 to 1000' })
  @Min(1, { message: 'write a whole number from 1 to 1000' })
  @Max(1000, { message: 'write a whole number from 1 to 1000' })
  crews!: number;

  @IsInt(COUNT)
  @Min(0, COUNT)
  @Max(1000, COUNT)
  liftersInUse!: number;

  @IsInt(COUNT)
  @Min(0, COUNT)
  @Max(1000, COUNT)
  panelsOnWheels!: number;

  @IsInt(COUNT)
  @Min(0, COUNT)
  @Max(1000, COUNT)
  trucksUnloading!: number;

  @IsInt(COUNT)
  @Min(0, COUNT)
  @Max(1000, COUNT)
  personsAloft!: number;
}

/** One line of a panel schedule. One of the two masses is given. */
export class PanelRowDto {
  @PlainText({ most: 80, what: 'the name of the panel as on the drawings' })
  name!: string;

  @DecimalText({ above: '0', atMost: '100000', what: 'the height in mm' })
  heightMm!: string;

  @DecimalText({ above: '0', atMost: '100000', what: 'the width in mm' })
  widthMm!: string;

  @DecimalText({ above: '0', atMost: '100000', what: 'the thickness in mm' })
  thicknessMm!: string;

  /** The weighed mass of one panel without its packing. */
  @ApiPropertyOptional()
  @MayBeLeftOut()
  @DecimalText({ above: '0', atMost: '100000', what: 'the mass in kg' })
  massKg?: string;

  /** The mass per square metre, to estimate the mass from. */
  @ApiPropertyOptional()
  @MayBeLeftOut()
  @DecimalText({ above: '0', atMost: '100000', what: 'the mass per square metre in kg/m2' })
  arealMassKgPerM2?: string;

  /** The mass of the fittings of one panel, where the mass per square metre leaves them out. */
  @ApiPropertyOptional()
  @MayBeLeftOut()
  @DecimalText({ atLeast: '0', atMost: '100000', what: 'the mass of the fittings in kg' })
  fittingsKg?: string;

  /** How far the centre of gravity lies from the middle of the height, either way; left out, the middle. */
  @ApiPropertyOptional()
  @MayBeLeftOut()
  @DecimalText({
    atLeast: '0',
    atMost: '100000',
    what: 'how far the centre of gravity lies from the middle of the height in mm',
  })
  centreOffsetMm?: string;

  /** Mass of the packing that travels with one panel; 0 for none. */
  @DecimalText({ atLeast: '0', atMost: '100000', what: 'the mass of the packing in kg' })
  packingKg!: string;

  @IsInt({ message: 'write how many, as a whole number' })
  @Max(LARGEST_COUNT, { message: 'write how many, as a whole number' })
  count!: number;
}

/** A rating that a person asks for. */
export class WantedRatingDto {
  @DecimalText({ above: '0', atMost: '1000000', what: 'the rating' })
  value!: string;

  /** A unit of what the kind is rated in, such as kg or daN. */
  @IsString()
  @Length(1, 20, { message: 'choose the unit of the rating' })
  unit!: string;
}

/** A person's change to a line that the method gave. */
export class LineAdjustmentDto {
  @IsString()
  @Length(1, 60)
  lineKey!: string;

  @PlainText(REASON)
  reason!: string;

  @MayBeLeftOut()
  @IsInt({ message: 'write a whole number from 0' })
  @Max(LARGEST_COUNT, { message: 'write a whole number from 0' })
  quantity?: number;

  @MayBeLeftOut()
  @Type(() => WantedRatingDto)
  @IsObject({ message: 'write its fields by name' })
  @ValidateNested()
  rating?: WantedRatingDto;

  @ApiPropertyOptional()
  @MayBeLeftOut()
  @DecimalText({ above: '0', atMost: '1000', what: 'the least length in m' })
  lengthM?: string;
}

/** A figure of the method that the job states for itself. */
export class StatedParameterDto {
  /** Such as `lifterMassKg`; the page Rules lists the figures of each method. */
  @Matches(/^[A-Za-z]{1,60}$/, { message: 'name a figure of the method' })
  key!: string;

  @DecimalText({ atLeast: '0', atMost: '100000', what: 'the figure' })
  value!: string;

  @PlainText({ most: 300, what: 'where the figure is from' })
  reason!: string;
}

/** How a sling is hitched. */
export class HitchDto {
  /** A mode that the kind knows, such as `choked`; the page Rules lists them. */
  @Matches(/^[A-Za-z]{1,40}$/, { message: 'choose a hitch that the kind knows' })
  mode!: string;

  /** The angle of the leg to the vertical in degrees, for inclined legs. */
  @ApiPropertyOptional()
  @MayBeLeftOut()
  @DecimalText({ atLeast: '0', atMost: '90', what: 'the angle of the leg to the vertical in degrees' })
  angleDeg?: string;
}

/** A line that the method does not know. */
export class AddedLineDto {
  /** Leave it out of a new line: it is given by Tackleroom. */
  @MayBeLeftOut()
  @Matches(/^\w{1,60}$/, { message: 'leave it out of a new line' })
  lineKey?: string;

  @PlainText({ most: 80, what: 'the name of the line' })
  label!: string;

  @IsString()
  @Length(1, 40, { message: 'choose a kind of gear' })
  kind!: string;

  @IsIn(DUTIES, { message: `choose from ${DUTIES.join(', ')}` })
  duty!: Duty;

  @IsInt({ message: 'write a whole number from 0' })
  @Max(LARGEST_COUNT, { message: 'write a whole number from 0' })
  quantity!: number;

  @MayBeLeftOut()
  @Type(() => WantedRatingDto)
  @IsObject({ message: 'write its fields by name' })
  @ValidateNested()
  rating?: WantedRatingDto;

  @ApiPropertyOptional()
  @MayBeLeftOut()
  @DecimalText({ above: '0', atMost: '1000', what: 'the least length in m' })
  lengthM?: string;

  /** For slings: the rating is then the load on the hitch, and what one sling needs is worked out. */
  @MayBeLeftOut()
  @Type(() => HitchDto)
  @IsObject({ message: 'write its fields by name' })
  @ValidateNested()
  hitch?: HitchDto;

  @PlainText(REASON)
  reason!: string;
}
