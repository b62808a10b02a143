import { Column, Entity, Index, JoinColumn, ManyToOne, PrimaryGeneratedColumn, Unique } from 'typeorm';
import { InspectionEntity } from '../inspections/inspection.entity.js';
import { JobEntity } from '../jobs/job.entity.js';
import { ItemEntity } from '../register/item.entity.js';
import type { CheckAnswer } from '../rules/checks/checklist.js';

/** A check before use with its answers: what the person about to use the item saw and measured. Never changed or deleted. */
@Entity('pre_use_check')
@Unique('uq_pre_use_check_inspection_id', ['inspectionId'])
@Index('ix_pre_use_check_item', ['itemId', 'checkedOn'])
@Index('ix_pre_use_check_job', ['jobId', 'checkedOn'])
export class PreUseCheckEntity {
  @PrimaryGeneratedColumn({ type: 'integer' })
  id!: number;

  @Column({ type: 'integer', name: 'inspection_id' })
  inspectionId!: number;

  @ManyToOne(() => InspectionEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'inspection_id', foreignKeyConstraintName: 'fk_pre_use_check_inspection' })
  inspection?: InspectionEntity;

  @Column({ type: 'integer', name: 'item_id' })
  itemId!: number;

  @ManyToOne(() => ItemEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'item_id', foreignKeyConstraintName: 'fk_pre_use_check_item' })
  item?: ItemEntity;

  @Column({ type: 'integer', name: 'job_id', nullable: true })
  jobId!: number | null;

  @ManyToOne(() => JobEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'job_id', foreignKeyConstraintName: 'fk_pre_use_check_job' })
  job?: JobEntity;

  /** The day at the item's store or site that the check counts for; of receipt where the clock is in doubt. */
  @Column({ type: 'date', name: 'checked_on' })
  checkedOn!: string;

  /** The moment by the clock of the device, in UTC. */
  @Column({ type: 'varchar', length: 24, name: 'checked_at' })
  checkedAt!: string;

  @Column({ type: 'simple-json' })
  answers!: CheckAnswer[];

  /** True when the clock of the device cannot be right: the check counts for no day, a fault found stands. */
  @Column({ type: 'boolean', name: 'clock_doubtful' })
  clockDoubtful!: boolean;

  @Column({ type: 'integer', name: 'checked_by', nullable: true })
  checkedBy!: number | null;

  @Column({ type: 'varchar', length: 24, name: 'received_at' })
  receivedAt!: string;
}
