import { Column, Entity, Index, JoinColumn, ManyToOne, PrimaryGeneratedColumn } from 'typeorm';
import { DefectEntity } from '../inspections/defect.entity.js';
import { InspectionEntity } from '../inspections/inspection.entity.js';
import { ItemEntity } from '../register/item.entity.js';

/** A photo or a certificate, kept by its content under the data folder, and what it belongs to. Never changed or deleted. */
@Entity('document')
@Index('ix_document_item', ['itemId'])
@Index('ix_document_sha256', ['sha256'])
export class DocumentEntity {
  @PrimaryGeneratedColumn({ type: 'integer' })
  id!: number;

  /** SHA-256 of the bytes, which is also the name of the file. */
  @Column({ type: 'varchar', length: 64 })
  sha256!: string;

  @Column({ type: 'varchar', length: 40, name: 'media_type' })
  mediaType!: string;

  @Column({ type: 'integer', name: 'size_bytes' })
  sizeBytes!: number;

  /** The name that the sender's file had, for people to recognise it by. */
  @Column({ type: 'varchar', length: 200 })
  name!: string;

  @Column({ type: 'varchar', length: 20 })
  kind!: 'photo' | 'certificate';

  @Column({ type: 'integer', name: 'item_id' })
  itemId!: number;

  @ManyToOne(() => ItemEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'item_id', foreignKeyConstraintName: 'fk_document_item' })
  item?: ItemEntity;

  @Column({ type: 'integer', name: 'inspection_id', nullable: true })
  inspectionId!: number | null;

  @ManyToOne(() => InspectionEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'inspection_id', foreignKeyConstraintName: 'fk_document_inspection' })
  inspection?: InspectionEntity;

  @Column({ type: 'integer', name: 'defect_id', nullable: true })
  defectId!: number | null;

  @ManyToOne(() => DefectEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'defect_id', foreignKeyConstraintName: 'fk_document_defect' })
  defect?: DefectEntity;

  @Column({ type: 'integer', name: 'kept_by', nullable: true })
  keptBy!: number | null;

  @Column({ type: 'varchar', length: 24, name: 'kept_at' })
  keptAt!: string;
}
