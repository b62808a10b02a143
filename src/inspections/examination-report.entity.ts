import { Column, Entity, JoinColumn, ManyToOne, PrimaryGeneratedColumn, Unique } from 'typeorm';
import { InspectionEntity } from './inspection.entity.js';
import type { ReportParticulars } from '../rules/examination/report.js';

/** A report of thorough examination: its number and its particulars. Never changed or deleted: a correction supersedes. */
@Entity('examination_report')
@Unique('uq_examination_report_inspection_id', ['inspectionId'])
@Unique('uq_examination_report_number', ['number'])
export class ExaminationReportEntity {
  @PrimaryGeneratedColumn({ type: 'integer' })
  id!: number;

  @Column({ type: 'integer', name: 'inspection_id' })
  inspectionId!: number;

  @ManyToOne(() => InspectionEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'inspection_id', foreignKeyConstraintName: 'fk_examination_report_inspection' })
  inspection?: InspectionEntity;

  @Column({ type: 'varchar', length: 30 })
  number!: string;

  @Column({ type: 'simple-json' })
  particulars!: ReportParticulars;

  @Column({ type: 'varchar', length: 24, name: 'made_at' })
  madeAt!: string;
}
