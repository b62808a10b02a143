import { Column, Entity, Index, JoinColumn, ManyToOne, PrimaryGeneratedColumn } from 'typeorm';
import type { EventType } from '../rules/gear/gear.js';
import { ItemEntity } from '../register/item.entity.js';

/** Something that happened to an item and calls for a fresh examination. Never changed or deleted. */
@Entity('gear_event')
@Index('ix_gear_event_item', ['itemId', 'happenedOn'])
export class GearEventEntity {
  @PrimaryGeneratedColumn({ type: 'integer' })
  id!: number;

  @Column({ type: 'integer', name: 'item_id' })
  itemId!: number;

  @ManyToOne(() => ItemEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'item_id', foreignKeyConstraintName: 'fk_gear_event_item' })
  item?: ItemEntity;

  @Column({ type: 'varchar', length: 20 })
  type!: EventType;

  @Column({ type: 'date', name: 'happened_on' })
  happenedOn!: string;

  @Column({ type: 'varchar', length: 500 })
  remarks!: string;

  @Column({ type: 'integer', name: 'reported_by', nullable: true })
  reportedBy!: number | null;

  @Column({ type: 'varchar', length: 24, name: 'recorded_at' })
  recordedAt!: string;
}
