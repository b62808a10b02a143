import { Type } from 'class-transformer';
import { IsIn, IsInt, Max, Min } from 'class-validator';
import { MayBeLeftOut } from '../http/may-be-left-out.js';
import { PlainText } from '../http/plain-text.js';
import { SHEET_LAYOUTS } from './sheet-layout.js';

const LAYOUT_KEYS = SHEET_LAYOUTS.map(({ key }) => key);
const LARGEST_ID = 2_147_483_647;

/** Which items get a label, and on which sheet. */
export class LabelQueryDto {
  @MayBeLeftOut()
  @PlainText({ most: 40, what: 'the kind of gear' })
  kind?: string;

  @MayBeLeftOut()
  @Type(() => Number)
  @IsInt({ message: 'choose the store by its number' })
  @Min(1)
  @Max(LARGEST_ID)
  storeId?: number;

  /** Tags, one to a line or with commas between them. */
  @MayBeLeftOut()
  @PlainText({ most: 8000, what: 'tags, one to a line', lines: true })
  tags?: string;

  @MayBeLeftOut()
  @Type(() => Number)
  @IsInt({ message: 'name the item by its number' })
  @Min(1)
  @Max(LARGEST_ID)
  itemId?: number;

  /** The job whose booked gear gets labels. */
  @MayBeLeftOut()
  @Type(() => Number)
  @IsInt({ message: 'name the job by its number' })
  @Min(1)
  @Max(LARGEST_ID)
  jobId?: number;

  @MayBeLeftOut()
  @IsIn(LAYOUT_KEYS, { message: 'choose a sheet from the list' })
  layout?: string;

  /** The first label of the sheet that is still there, counted row by row from 1. */
  @MayBeLeftOut()
  @Type(() => Number)
  @IsInt({ message: 'write a whole number, 1 for a new sheet' })
  @Min(1, { message: 'write a whole number, 1 for a new sheet' })
  @Max(100, { message: 'no sheet has so many labels' })
  start?: number;
}
