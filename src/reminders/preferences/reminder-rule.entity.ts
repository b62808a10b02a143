import { Column, Entity, JoinColumn, ManyToOne, PrimaryColumn } from 'typeorm';
import { StoreEntity } from '../../stores/store.entity.js';

/** When a store works and how early it wants to hear. A store without a row goes by the defaults. */
@Entity('reminder_rule')
export class ReminderRuleEntity {
  @PrimaryColumn({ type: 'integer', name: 'store_id' })
  storeId!: number;

  @ManyToOne(() => StoreEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'store_id', foreignKeyConstraintName: 'fk_reminder_rule_store' })
  store?: StoreEntity;

  /** ISO 8601 days of the week: 1 is Monday. */
  @Column({ type: 'simple-json', name: 'work_days' })
  workDays!: number[];

  /** Days on which the store does not work, whatever day of the week they are. */
  @Column({ type: 'simple-json' })
  holidays!: string[];

  /** So many days before a due day it is told, the longest first. */
  @Column({ type: 'simple-json', name: 'lead_days' })
  leadDays!: number[];

  /** The time of the store's day at which digests are made, as `06:00`. */
  @Column({ type: 'varchar', length: 5, name: 'digest_time' })
  digestTime!: string;

  @Column({ type: 'integer' })
  version!: number;
}
