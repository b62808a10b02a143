import { Type } from 'class-transformer';
import { IsInt, Max, Min } from 'class-validator';
import { MayBeLeftOut } from '../../http/may-be-left-out.js';

/** A new calendar feed. */
export class NewCalendarFeedDto {
  /** The store that it shows; every store that its owner is told of when left out. */
  @MayBeLeftOut()
  @Type(() => Number)
  @IsInt({ message: 'choose the store by its number' })
  @Min(1, { message: 'choose the store by its number' })
  @Max(2_000_000_000, { message: 'choose the store by its number' })
  storeId?: number;
}

/** A calendar feed that is open. Its address is not here: it was told once, when the feed was made. */
export class CalendarFeedView {
  id!: number;
  personId!: number;
  personName!: string;
  /** The store that it shows; null for every store that its owner is told of. */
  storeId!: number | null;
  storeName!: string | null;
  createdAt!: string;
}

/** A calendar feed that was just made. */
export class NewCalendarFeedView {
  id!: number;
  storeId!: number | null;
  /** Where a calendar program reads it. Told this once: only its fingerprint is kept. */
  address!: string;
}
