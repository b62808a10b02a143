import { Column, Entity, Index, JoinColumn, ManyToOne, PrimaryGeneratedColumn, Unique } from 'typeorm';
import type { InspectionType } from '../rules/gear/gear.js';
import { ItemEntity } from '../register/item.entity.js';

/** One inspection as recorded. Never changed or deleted: a correction is a new record that supersedes it. */
@Entity('inspection')
@Unique('uq_inspection_supersedes_id', ['supersedesId'])
@Index('ix_inspection_item_type_day', ['itemId', 'type', 'doneOn'])
export class InspectionEntity {
  @PrimaryGeneratedColumn({ type: 'integer' })
  id!: number;

  @Column({ type: 'integer', name: 'item_id' })
  itemId!: number;

  @ManyToOne(() => ItemEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'item_id', foreignKeyConstraintName: 'fk_inspection_item' })
  item?: ItemEntity;

  @Column({ type: 'varchar', length: 30 })
  type!: InspectionType;

  @Column({ type: 'date', name: 'done_on' })
  doneOn!: string;

  @Column({ type: 'varchar', length: 10 })
  outcome!: 'fit' | 'unfit';

  /** The last day the examiner allows before the next one, where they named a day. */
  @Column({ type: 'date', name: 'next_due_on', nullable: true })
  nextDueOn!: string | null;

  /** Who did it, as written on the report: it may be someone without an account. */
  @Column({ type: 'varchar', length: 120, name: 'done_by' })
  doneBy!: string;

  @Column({ type: 'varchar', length: 60, name: 'report_number', nullable: true })
  reportNumber!: string | null;

  @Column({ type: 'varchar', length: 1000 })
  remarks!: string;

  @Column({ type: 'integer', name: 'supersedes_id', nullable: true })
  supersedesId!: number | null;

  @Column({ type: 'integer', name: 'recorded_by', nullable: true })
  recordedBy!: number | null;

  @Column({ type: 'varchar', length: 24, name: 'recorded_at' })
  recordedAt!: string;
}
