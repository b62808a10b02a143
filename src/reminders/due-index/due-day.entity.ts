import { Column, Entity, Index, JoinColumn, ManyToOne, PrimaryColumn } from 'typeorm';
import { ItemEntity } from '../../register/item.entity.js';
import { StoreEntity } from '../../stores/store.entity.js';

/**
 * The earliest day on which anything of an item in service falls due: an index into the register, never the truth.
 * Whoever finds an item by it asks the rules again.
 */
@Entity('due_day')
@Index('ix_due_day_store', ['storeId', 'dueOn'])
export class DueDayEntity {
  @PrimaryColumn({ type: 'integer', name: 'item_id' })
  itemId!: number;

  @ManyToOne(() => ItemEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'item_id', foreignKeyConstraintName: 'fk_due_day_item' })
  item?: ItemEntity;

  @Column({ type: 'integer', name: 'store_id' })
  storeId!: number;

  @ManyToOne(() => StoreEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'store_id', foreignKeyConstraintName: 'fk_due_day_store' })
  store?: StoreEntity;

  @Column({ type: 'date', name: 'due_on' })
  dueOn!: string;

  /** When it was found to fall due on this day at this store; null where that was before anybody wrote it down. */
  @Column({ type: 'varchar', length: 24, nullable: true })
  since!: string | null;
}
