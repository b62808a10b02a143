import { Column, Entity, Index, PrimaryColumn } from 'typeorm';

/** A file handed over for import, kept between the dry run and the storeman's choice. */
@Entity('upload')
export class UploadEntity {
  @PrimaryColumn({ type: 'varchar', length: 36 })
  id!: string;

  @Column({ type: 'integer', name: 'person_id' })
  personId!: number;

  @Column({ type: 'varchar', length: 255, name: 'file_name' })
  fileName!: string;

  /** The bytes in base64: text means the same on both engines. */
  @Column({ type: 'text' })
  content!: string;

  @Index('ix_upload_created_at')
  @Column({ type: 'varchar', length: 24, name: 'created_at' })
  createdAt!: string;
}
