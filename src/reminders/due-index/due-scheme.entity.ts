import { Column, Entity, PrimaryColumn } from 'typeorm';

/** What a scheme asked when the due days were worked out last: another fingerprint makes all of them stale. */
@Entity('due_scheme')
export class DueSchemeEntity {
  @PrimaryColumn({ type: 'varchar', length: 20 })
  scheme!: string;

  @Column({ type: 'varchar', length: 64 })
  fingerprint!: string;
}
