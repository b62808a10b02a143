import { IsInt, IsString, IsTimeZone, Length, Max, Min } from 'class-validator';
import { MayBeLeftOut } from '../http/may-be-left-out.js';
import { PlainText } from '../http/plain-text.js';
import { Type } from 'class-transformer';

const TIME_ZONE = { message: 'write a time zone of the IANA database, such as Europe/London' };

/** A new store. */
export class NewStoreDto {
  /** What people call it. */
  @PlainText({ most: 80, what: 'the name of the store' })
  name!: string;

  @PlainText({ most: 200, what: 'where the store is' })
  address!: string;

  /** Key of the inspection scheme that holds where the store stands. */
  @IsString()
  @Length(1, 20, { message: 'choose the place whose inspection rules hold' })
  scheme!: string;

  /** IANA time zone: 'today' in this store is today there. */
  @IsTimeZone(TIME_ZONE)
  timeZone!: string;
}

/** A change to a store. What is left out stays as it is. */
export class ChangeStoreDto {
  @MayBeLeftOut()
  @PlainText({ most: 80, what: 'the name of the store' })
  name?: string;

  @MayBeLeftOut()
  @PlainText({ most: 200, what: 'where the store is' })
  address?: string;

  @MayBeLeftOut()
  @IsString()
  @Length(1, 20, { message: 'choose the place whose inspection rules hold' })
  scheme?: string;

  @MayBeLeftOut()
  @IsTimeZone(TIME_ZONE)
  timeZone?: string;
}

/** The version of the store that a page's form was made from. */
export class ChangeStoreFormDto extends ChangeStoreDto {
  @Type(() => Number)
  @IsInt()
  @Min(1)
  @Max(1_000_000_000)
  version!: number;
}

/** A store as others see it. */
export class StoreView {
  id!: number;
  name!: string;
  address!: string;
  scheme!: string;
  timeZone!: string;
  version!: number;
}
