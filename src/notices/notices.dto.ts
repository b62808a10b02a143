import { ApiProperty } from '@nestjs/swagger';
import { AffectedJobView } from '../inspections/inspections.dto.js';
import { NOTICE_KINDS, type NoticeKind } from './notices.js';

/** Something that storeman and manager must hear at once. */
export class NoticeView {
  id!: number;
  @ApiProperty({ enum: NOTICE_KINDS })
  kind!: NoticeKind;
  itemId!: number;
  tag!: string;
  storeName!: string;
  /** What was found. */
  what!: string;
  /** Who found it. */
  by!: string;
  raisedAt!: string;
  /** The job on which it was found. */
  jobId!: number | null;
  /** The jobs that the item is promised to as of now: each needs other gear in its place. */
  jobs!: AffectedJobView[];
}
