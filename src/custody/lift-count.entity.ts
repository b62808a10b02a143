import { Column, Entity, Index, JoinColumn, ManyToOne, PrimaryGeneratedColumn } from 'typeorm';
import { JobEntity } from '../jobs/job.entity.js';

/** How many lifts the gear of a job made on a day. A later line for the same day takes the place of the earlier one. */
@Entity('lift_count')
@Index('ix_lift_count_job', ['jobId', 'onDay'])
export class LiftCountEntity {
  @PrimaryGeneratedColumn({ type: 'integer' })
  id!: number;

  @Column({ type: 'integer', name: 'job_id' })
  jobId!: number;

  @ManyToOne(() => JobEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'job_id', foreignKeyConstraintName: 'fk_lift_count_job' })
  job?: JobEntity;

  @Column({ type: 'date', name: 'on_day' })
  onDay!: string;

  @Column({ type: 'integer' })
  lifts!: number;

  @Column({ type: 'integer', name: 'recorded_by', nullable: true })
  recordedBy!: number | null;

  @Column({ type: 'varchar', length: 24, name: 'recorded_at' })
  recordedAt!: string;
}
