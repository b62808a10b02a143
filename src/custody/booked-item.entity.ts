import { Column, Entity, Index, JoinColumn, ManyToOne, PrimaryGeneratedColumn } from 'typeorm';
import { JobEntity } from '../jobs/job.entity.js';
import { ItemEntity } from '../register/item.entity.js';

/** Where a promised item is: still in the store, out on the job, back, not come back, or no longer promised. */
export const BOOKED_STATES = ['reserved', 'out', 'back', 'missing', 'released'] as const;
export type BookedState = (typeof BOOKED_STATES)[number];

/** One item promised to one job for a window of days. The database itself refuses a second promise on any of the days. */
@Entity('booked_item')
@Index('ix_booked_item_job', ['jobId'])
@Index('ix_booked_item_item_window', ['itemId', 'fromDay', 'toDay'])
@Index('ix_booked_item_state', ['state'])
export class BookedItemEntity {
  @PrimaryGeneratedColumn({ type: 'integer' })
  id!: number;

  @Column({ type: 'integer', name: 'job_id' })
  jobId!: number;

  @ManyToOne(() => JobEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'job_id', foreignKeyConstraintName: 'fk_booked_item_job' })
  job?: JobEntity;

  @Column({ type: 'integer', name: 'item_id' })
  itemId!: number;

  @ManyToOne(() => ItemEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'item_id', foreignKeyConstraintName: 'fk_booked_item_item' })
  item?: ItemEntity;

  /** The gear line it serves. */
  @Column({ type: 'varchar', length: 60, name: 'line_key' })
  lineKey!: string;

  @Column({ type: 'date', name: 'from_day' })
  fromDay!: string;

  /** The back day; on coming back early, the day it came back. */
  @Column({ type: 'date', name: 'to_day' })
  toDay!: string;

  @Column({ type: 'varchar', length: 10 })
  state!: BookedState;

  @Column({ type: 'varchar', length: 24, name: 'reserved_at' })
  reservedAt!: string;

  @Column({ type: 'varchar', length: 24, name: 'handed_out_at', nullable: true })
  handedOutAt!: string | null;

  @Column({ type: 'varchar', length: 24, name: 'settled_at', nullable: true })
  settledAt!: string | null;

  /** How it came back, in the words of the one who took it in. */
  @Column({ type: 'varchar', length: 500, name: 'return_remarks', nullable: true })
  returnRemarks!: string | null;

  @Column({ type: 'integer' })
  version!: number;
}
