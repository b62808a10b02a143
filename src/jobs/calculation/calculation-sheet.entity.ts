import { Column, Entity, Index, JoinColumn, ManyToOne, PrimaryGeneratedColumn } from 'typeorm';
import type { CalculationSheet } from './calculation-sheet.js';
import { JobEntity } from '../job.entity.js';

/** The arithmetic of a job as it stood when gear was reserved on it. Never changed or deleted. */
@Entity('calculation_sheet')
@Index('ix_calculation_sheet_job', ['jobId'])
export class CalculationSheetEntity {
  @PrimaryGeneratedColumn({ type: 'integer' })
  id!: number;

  @Column({ type: 'integer', name: 'job_id' })
  jobId!: number;

  @ManyToOne(() => JobEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'job_id', foreignKeyConstraintName: 'fk_calculation_sheet_job' })
  job?: JobEntity;

  @Column({ type: 'varchar', length: 24, name: 'kept_at' })
  keptAt!: string;

  /** SHA-256 of the sheet, to tell whether the next one says anything new. */
  @Column({ type: 'varchar', length: 64 })
  fingerprint!: string;

  @Column({ type: 'simple-json' })
  sheet!: CalculationSheet;
}
