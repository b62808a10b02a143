import { ApiProperty } from '@nestjs/swagger';
import { CONDITIONS, type Condition } from '../rules/gear/gear.js';

export const CHECK_STATES = ['checked', 'failed', 'unchecked'] as const;
export type CheckState = (typeof CHECK_STATES)[number];

/** How one item stands with its check of the day. */
export class CoveredItemView {
  itemId!: number;
  tag!: string;
  kind!: string;
  @ApiProperty({ enum: CHECK_STATES })
  state!: CheckState;
  @ApiProperty({ enum: CONDITIONS })
  condition!: Condition;
  /** The moment of the last check by the clock of its device. */
  checkedAt?: string;
  checkedBy?: string;
  /** True when that clock cannot be right: the check counts for no day, a fault found stands. */
  clockDoubtful?: boolean;
}

/** The items of one gear line. */
export class LineCoverageView {
  lineKey!: string;
  label!: string;
  /** Such as '9 of 12 ratchet straps checked today'. */
  sentence!: string;
  checked!: number;
  of!: number;
  items!: CoveredItemView[];
}

/** Who checked what of a job's gear on a day. Only what each item's own check says counts. */
export class CoverageView {
  jobId!: number;
  day!: string;
  today!: string;
  /** False while nothing of it is out: then what is reserved is listed. */
  out!: boolean;
  lines!: LineCoverageView[];
  /** Items checked for the job on the day without being on it. */
  others!: CoveredItemView[];
}
