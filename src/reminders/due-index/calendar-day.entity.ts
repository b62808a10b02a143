import { Column, Entity, JoinColumn, ManyToOne, PrimaryGeneratedColumn, Unique } from 'typeorm';
import { StoreEntity } from '../../stores/store.entity.js';

/** How often what falls due at a store on a day has changed. Kept when nothing falls due any more: that is a change too. */
@Entity('calendar_day')
@Unique('uq_calendar_day_store_day', ['storeId', 'onDay'])
export class CalendarDayEntity {
  @PrimaryGeneratedColumn({ type: 'integer' })
  id!: number;

  @Column({ type: 'integer', name: 'store_id' })
  storeId!: number;

  @ManyToOne(() => StoreEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'store_id', foreignKeyConstraintName: 'fk_calendar_day_store' })
  store?: StoreEntity;

  @Column({ type: 'date', name: 'on_day' })
  onDay!: string;

  @Column({ type: 'integer' })
  sequence!: number;

  @Column({ type: 'varchar', length: 24, name: 'changed_at' })
  changedAt!: string;
}
