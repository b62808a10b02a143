import { Column, Entity, Index, JoinColumn, ManyToOne, PrimaryGeneratedColumn, Unique } from 'typeorm';
import { StoreEntity } from '../stores/store.entity.js';
import type {
  GearChoice,
  JobCounts,
  LineAdjustment,
  AddedLine,
  PanelRow,
  StatedParameter,
} from './job-parts.js';

@Entity('job')
@Unique('uq_job_reference_key', ['referenceKey'])
@Index('ix_job_window', ['loadOutDay', 'backDay'])
export class JobEntity {
  @PrimaryGeneratedColumn({ type: 'integer' })
  id!: number;

  /** The company's own job number. */
  @Column({ type: 'varchar', length: 40 })
  reference!: string;

  @Column({ type: 'varchar', length: 40, name: 'reference_key' })
  referenceKey!: string;

  @Column({ type: 'varchar', length: 120 })
  name!: string;

  @Column({ type: 'varchar', length: 200 })
  site!: string;

  /** Key of the inspection scheme that holds where the site stands. */
  @Column({ type: 'varchar', length: 20 })
  scheme!: string;

  @Column({ type: 'varchar', length: 40 })
  method!: string;

  /** The store the truck loads at. */
  @Column({ type: 'integer', name: 'store_id' })
  storeId!: number;

  @ManyToOne(() => StoreEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'store_id', foreignKeyConstraintName: 'fk_job_store' })
  store?: StoreEntity;

  @Column({ type: 'date', name: 'load_out_day' })
  loadOutDay!: string;

  @Column({ type: 'date', name: 'back_day' })
  backDay!: string;

  /** Whether gear may come from other stores too. */
  @Column({ type: 'boolean', name: 'other_stores' })
  otherStores!: boolean;

  @Column({ type: 'simple-json' })
  counts!: JobCounts;

  /** Figures of the method that this job states for itself. */
  @Column({ type: 'simple-json', default: '[]' })
  parameters!: StatedParameter[];

  /** When trucks are ordered to arrive, in the time of the site: `2026-12-01T08:30`. Empty while none is ordered. */
  @Column({ type: 'simple-json', name: 'truck_times', default: '[]' })
  truckTimes!: string[];

  @Column({ type: 'simple-json' })
  panels!: PanelRow[];

  @Column({ type: 'simple-json' })
  adjustments!: LineAdjustment[];

  @Column({ type: 'simple-json', name: 'added_lines' })
  addedLines!: AddedLine[];

  @Column({ type: 'simple-json' })
  choices!: GearChoice[];

  @Column({ type: 'boolean' })
  cancelled!: boolean;

  @Column({ type: 'varchar', length: 24, name: 'created_at' })
  createdAt!: string;

  @Column({ type: 'varchar', length: 24, name: 'updated_at' })
  updatedAt!: string;

  @Column({ type: 'integer' })
  version!: number;
}
