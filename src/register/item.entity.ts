import { Column, Entity, Index, JoinColumn, ManyToOne, PrimaryGeneratedColumn, Unique } from 'typeorm';
import type { Condition, WrittenScheme } from '../rules/gear/gear.js';
import type { LoadChart } from '../rules/hosting/load-chart.js';
import type { Marking } from '../rules/quantities/marking.js';
import { StoreEntity } from '../stores/store.entity.js';

/** How keys sort: by their code points on both engines (SQLite always does; the name is PostgreSQL's). */
const BY_SIGN = { collation: 'C' };

@Entity('item')
@Unique('uq_item_tag_key', ['tagKey'])
@Unique('uq_item_maker_key_serial_key', ['makerKey', 'serialKey'])
@Index('ix_item_kind_store', ['kind', 'storeId'])
@Index('ix_item_serial_key', ['serialKey'])
@Index('ix_item_look_alike_key', ['makerKey', 'lookAlikeKey'])
@Index('ix_item_tag_look_alike_key', ['tagLookAlikeKey'])
export class ItemEntity {
  @PrimaryGeneratedColumn({ type: 'integer' })
  id!: number;

  /** The company's own mark, as written on the item. */
  @Column({ type: 'varchar', length: 40 })
  tag!: string;

  /** The tag without case and separators: what makes it unique and what it is found by. */
  @Column({ type: 'varchar', length: 40, name: 'tag_key', ...BY_SIGN })
  tagKey!: string;

  /** The tag with O and 0, I and 1 folded together, to find what a tag that was misread may mean. */
  @Column({ type: 'varchar', length: 40, name: 'tag_look_alike_key', default: '' })
  tagLookAlikeKey!: string;

  /** The maker's serial number; null when the plate cannot be read, which makes the item unfit. */
  @Column({ type: 'varchar', length: 60, nullable: true })
  serial!: string | null;

  @Column({ type: 'varchar', length: 60, name: 'serial_key', nullable: true, ...BY_SIGN })
  serialKey!: string | null;

  /** The serial with O and 0, I and 1 folded together, to catch a serial that was misread. */
  @Column({ type: 'varchar', length: 60, name: 'look_alike_key', nullable: true })
  lookAlikeKey!: string | null;

  @Column({ type: 'varchar', length: 80 })
  maker!: string;

  @Column({ type: 'varchar', length: 80, name: 'maker_key', ...BY_SIGN })
  makerKey!: string;

  @Column({ type: 'varchar', length: 40 })
  kind!: string;

  @Index('ix_item_store')
  @Column({ type: 'integer', name: 'store_id' })
  storeId!: number;

  @ManyToOne(() => StoreEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'store_id', foreignKeyConstraintName: 'fk_item_store' })
  store?: StoreEntity;

  @Index('ix_item_condition')
  @Column({ type: 'varchar', length: 20 })
  condition!: Condition;

  @Column({ type: 'varchar', length: 500, name: 'condition_reason', nullable: true })
  conditionReason!: string | null;

  /** Who reported what took the item out of service: never the one who may release it. */
  @Column({ type: 'integer', name: 'condition_reported_by', nullable: true })
  conditionReportedBy!: number | null;

  /** The day it was taken out of service, at its store: only an examination from then on can release it. */
  @Column({ type: 'date', name: 'condition_since', nullable: true })
  conditionSince!: string | null;

  /** True when it did not come back from a job. */
  @Column({ type: 'boolean' })
  missing!: boolean;

  @Column({ type: 'boolean', name: 'label_legible' })
  labelLegible!: boolean;

  @Column({ type: 'boolean', name: 'certificate_on_file' })
  certificateOnFile!: boolean;

  @Column({ type: 'simple-json' })
  markings!: Marking[];

  /** Measured attributes by name, exact decimal text in the unit the name ends in. */
  @Column({ type: 'simple-json' })
  dimensions!: Record<string, string>;

  /** The maker's batch or lot, as on the plate or the certificate. */
  @Column({ type: 'varchar', length: 60, nullable: true })
  batch!: string | null;

  /** Whose it is, for gear that is hired in; null for the company's own. */
  @Column({ type: 'varchar', length: 120, nullable: true })
  owner!: string | null;

  /** The first and the last day of the hire, both included. */
  @Column({ type: 'date', name: 'hired_from', nullable: true })
  hiredFrom!: string | null;

  @Column({ type: 'date', name: 'hired_to', nullable: true })
  hiredTo!: string | null;

  /** What a host machine carries at which height and distance, and what covers an attachment on it. */
  @Column({ type: 'simple-json', name: 'load_chart', nullable: true })
  loadChart!: LoadChart | null;

  @Column({ type: 'date', name: 'manufactured_on', nullable: true })
  manufacturedOn!: string | null;

  @Column({ type: 'date', name: 'first_used_on', nullable: true })
  firstUsedOn!: string | null;

  @Column({ type: 'date', name: 'declaration_on', nullable: true })
  declarationOn!: string | null;

  @Column({ type: 'simple-json', name: 'written_schemes' })
  writtenSchemes!: WrittenScheme[];

  @Column({ type: 'varchar', length: 1000 })
  notes!: string;

  @Column({ type: 'varchar', length: 24, name: 'created_at' })
  createdAt!: string;

  @Column({ type: 'varchar', length: 24, name: 'updated_at' })
  updatedAt!: string;

  @Column({ type: 'integer' })
  version!: number;
}
