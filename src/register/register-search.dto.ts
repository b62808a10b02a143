import { Type } from 'class-transformer';
import { IsIn, IsInt, Max, MaxLength, Min } from 'class-validator';
import { MayBeLeftOut } from '../http/may-be-left-out.js';
import { PlainText } from '../http/plain-text.js';
import { TagText } from '../http/tag-text.js';
import { CONDITIONS, type Condition } from '../rules/gear/gear.js';
import { ItemRowView } from './register.dto.js';

/** The words an item's dates can be asked for by. */
export const CURRENCIES = ['inDate', 'dueSoon', 'outOfDate', 'neverExamined', 'notRequired'] as const;

/** Which items to find. Everything given must hold. */
export class FindItemsDto {
  /** The beginning of a tag, a serial number or a maker's name, without regard to capitals; or the address on a label. */
  @MayBeLeftOut()
  @TagText({ most: 80, what: 'the beginning of a tag, a serial number or a maker' })
  text?: string;

  @MayBeLeftOut()
  @PlainText({ most: 40, what: 'the kind of gear' })
  kind?: string;

  @MayBeLeftOut()
  @Type(() => Number)
  @IsInt({ message: 'choose the store by its number' })
  @Min(1)
  @Max(2_000_000_000)
  storeId?: number;

  @MayBeLeftOut()
  @IsIn(CONDITIONS, { message: `choose from ${CONDITIONS.join(', ')}` })
  condition?: Condition;

  /** The maker's batch or lot, without regard to capitals, spaces and hyphens. */
  @MayBeLeftOut()
  @PlainText({ most: 60, what: "the maker's batch or lot" })
  batch?: string;

  /**
   * How the item stands with its dates today. This is computed, not kept: one answer looks at 2,000 items at most,
   * so a page may hold fewer than `limit`, or none, and still have a `next`. Narrow it by kind or store.
   */
  @MayBeLeftOut()
  @IsIn(CURRENCIES, { message: `choose from ${CURRENCIES.join(', ')}` })
  currency?: (typeof CURRENCIES)[number];

  /** The `next` of the page before. */
  @MayBeLeftOut()
  @MaxLength(400)
  after?: string;

  /** How many to a page: 50 when left out. */
  @MayBeLeftOut()
  @Type(() => Number)
  @IsInt({ message: 'write a whole number from 1 to 200' })
  @Min(1, { message: 'write a whole number from 1 to 200' })
  @Max(200, { message: 'write a whole number from 1 to 200' })
  limit?: number;
}

/** A page of items in the order of their tags. */
export class ItemPageView {
  items!: ItemRowView[];
  /** What to send as `after` for the next page; absent on the last. */
  next?: string;
}
