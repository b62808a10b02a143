import { ApiProperty } from '@nestjs/swagger';
import { AffectedJobView } from '../inspections/inspections.dto.js';
import { NOTICE_KINDS, type NoticeKind } from './notices.js';

/** The maker's batch that a notice is about. */
export class NoticedBatchView {
  batch!: string;
  maker!: string;
  /** How many items of it, in this store, were taken out of service. */
  items!: number;
}

/** Something that storeman and manager must hear at once: of one item, or of a maker's batch. */
export class NoticeView {
  id!: number;
  @ApiProperty({ enum: NOTICE_KINDS })
  kind!: NoticeKind;
  /** The item; null of a batch. */
  itemId!: number | null;
  tag!: string | null;
  /** The batch; null of an item. */
  @ApiProperty({ type: NoticedBatchView, nullable: true })
  batch!: NoticedBatchView | null;
  storeName!: string;
  /** What was found. */
  what!: string;
  /** Of a danger by a day: the last day on which it may be used. */
  lastDayOfUse!: string | null;
  /** Who found it. */
  by!: string;
  raisedAt!: string;
  /** The job on which it was found. */
  jobId!: number | null;
  /** The jobs that the item, or any of the batch that is out of service, is promised to as of now: each needs other gear. */
  jobs!: AffectedJobView[];
}
