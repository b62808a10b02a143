import { Column, Entity, JoinColumn, ManyToOne, PrimaryGeneratedColumn, Unique } from 'typeorm';
import { JobEntity } from '../../jobs/job.entity.js';
import { ItemEntity } from '../../register/item.entity.js';

/** Booked gear that was unfit when it was looked at last. It goes when the gear is fit again, so that a relapse is told. */
@Entity('told_flag')
@Unique('uq_told_flag_job_id_item_id', ['jobId', 'itemId'])
export class ToldFlagEntity {
  @PrimaryGeneratedColumn({ type: 'integer' })
  id!: number;

  @Column({ type: 'integer', name: 'job_id' })
  jobId!: number;

  @ManyToOne(() => JobEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'job_id', foreignKeyConstraintName: 'fk_told_flag_job' })
  job?: JobEntity;

  @Column({ type: 'integer', name: 'item_id' })
  itemId!: number;

  @ManyToOne(() => ItemEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'item_id', foreignKeyConstraintName: 'fk_told_flag_item' })
  item?: ItemEntity;

  /** The codes of its refusals, sorted: other reasons are news. */
  @Column({ type: 'varchar', length: 400 })
  codes!: string;

  @Column({ type: 'varchar', length: 24, name: 'told_at' })
  toldAt!: string;
}
