import { Column, Entity, Index, JoinColumn, ManyToOne, PrimaryGeneratedColumn } from 'typeorm';
import { JobEntity } from '../jobs/job.entity.js';
import { ItemEntity } from '../register/item.entity.js';
import { StoreEntity } from '../stores/store.entity.js';

/** Something that storeman and manager of a store must hear at once. */
@Entity('notice')
@Index('ix_notice_store', ['storeId', 'settledAt'])
export class NoticeEntity {
  @PrimaryGeneratedColumn({ type: 'integer' })
  id!: number;

  @Column({ type: 'varchar', length: 30 })
  kind!: string;

  @Column({ type: 'integer', name: 'store_id' })
  storeId!: number;

  @ManyToOne(() => StoreEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'store_id', foreignKeyConstraintName: 'fk_notice_store' })
  store?: StoreEntity;

  @Column({ type: 'integer', name: 'item_id', nullable: true })
  itemId!: number | null;

  @ManyToOne(() => ItemEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'item_id', foreignKeyConstraintName: 'fk_notice_item' })
  item?: ItemEntity;

  @Column({ type: 'integer', name: 'job_id', nullable: true })
  jobId!: number | null;

  @ManyToOne(() => JobEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'job_id', foreignKeyConstraintName: 'fk_notice_job' })
  job?: JobEntity;

  @Column({ type: 'simple-json' })
  detail!: Record<string, string>;

  @Column({ type: 'varchar', length: 24, name: 'raised_at' })
  raisedAt!: string;

  @Column({ type: 'varchar', length: 24, name: 'settled_at', nullable: true })
  settledAt!: string | null;

  /** When it was decided who gets it by mail; null until then. */
  @Column({ type: 'varchar', length: 24, name: 'mailed_at', nullable: true })
  mailedAt!: string | null;
}
