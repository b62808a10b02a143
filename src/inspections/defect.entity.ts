import { Column, Entity, Index, JoinColumn, ManyToOne, PrimaryGeneratedColumn } from 'typeorm';
import { ItemEntity } from '../register/item.entity.js';
import { InspectionEntity } from './inspection.entity.js';
import type { Working } from '../rules/working.js';
import type { Severity } from './severity.js';

/** Something found wrong with an item. Closed only by the examination that passed the item afterwards. */
@Entity('defect')
@Index('ix_defect_item', ['itemId'])
export class DefectEntity {
  @PrimaryGeneratedColumn({ type: 'integer' })
  id!: number;

  @Column({ type: 'integer', name: 'item_id' })
  itemId!: number;

  @ManyToOne(() => ItemEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'item_id', foreignKeyConstraintName: 'fk_defect_item' })
  item?: ItemEntity;

  @Column({ type: 'varchar', length: 20 })
  severity!: Severity;

  @Column({ type: 'varchar', length: 500 })
  description!: string;

  /** What of the checklist it is about; null where it was found otherwise. */
  @Column({ type: 'varchar', length: 40, nullable: true })
  kind!: string | null;

  /** What was measured: the figure, the limit and its source. */
  @Column({ type: 'simple-json', nullable: true })
  figures!: readonly Working[] | null;

  /** For a danger by a date: the last day of use. */
  @Column({ type: 'date', name: 'last_day_of_use', nullable: true })
  lastDayOfUse!: string | null;

  @Column({ type: 'integer', name: 'reported_by', nullable: true })
  reportedBy!: number | null;

  @Column({ type: 'varchar', length: 24, name: 'recorded_at' })
  recordedAt!: string;

  @Column({ type: 'integer', name: 'closed_by_inspection_id', nullable: true })
  closedByInspectionId!: number | null;

  @ManyToOne(() => InspectionEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'closed_by_inspection_id', foreignKeyConstraintName: 'fk_defect_closed_by' })
  closedByInspection?: InspectionEntity;
}
