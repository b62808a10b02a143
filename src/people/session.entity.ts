import { Column, Entity, Index, JoinColumn, ManyToOne, PrimaryColumn } from 'typeorm';
import { PersonEntity } from './person.entity.js';

@Entity('session')
export class SessionEntity {
  /** SHA-256 of the token in the cookie: a copy of the table signs nobody in. */
  @PrimaryColumn({ type: 'varchar', length: 64, name: 'token_hash' })
  tokenHash!: string;

  @Index('ix_session_person')
  @Column({ type: 'integer', name: 'person_id' })
  personId!: number;

  @ManyToOne(() => PersonEntity, { onDelete: 'CASCADE' })
  @JoinColumn({ name: 'person_id', foreignKeyConstraintName: 'fk_session_person' })
  person?: PersonEntity;

  @Column({ type: 'varchar', length: 24, name: 'created_at' })
  createdAt!: string;

  @Column({ type: 'varchar', length: 24, name: 'last_seen_at' })
  lastSeenAt!: string;
}
