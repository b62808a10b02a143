import { Column, Entity, PrimaryColumn } from 'typeorm';

/** A heading mapping that was confirmed once, kept for the next file with the same headings. */
@Entity('import_mapping')
export class ImportMappingEntity {
  /** SHA-256 of the headings in their order. */
  @PrimaryColumn({ type: 'varchar', length: 64 })
  signature!: string;

  @Column({ type: 'simple-json' })
  mapping!: object;

  @Column({ type: 'varchar', length: 24, name: 'updated_at' })
  updatedAt!: string;
}
