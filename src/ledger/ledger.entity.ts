import { Column, Entity, Index, PrimaryColumn } from 'typeorm';

/** One entry of the append-only history. The database refuses to change or delete it. */
@Entity('ledger_entry')
@Index('ix_ledger_entry_subject', ['subjectKind', 'subjectId'])
export class LedgerEntryEntity {
  /** 1, 2, 3 … without a gap. */
  @PrimaryColumn({ type: 'integer' })
  number!: number;

  @Column({ type: 'varchar', length: 24 })
  at!: string;

  /** The person who did it; null for Tackleroom itself. */
  @Column({ type: 'integer', name: 'actor_id', nullable: true })
  actorId!: number | null;

  @Column({ type: 'varchar', length: 120, name: 'actor_name' })
  actorName!: string;

  /** What was done, such as `item.quarantined`. */
  @Column({ type: 'varchar', length: 60 })
  action!: string;

  @Column({ type: 'varchar', length: 20, name: 'subject_kind' })
  subjectKind!: string;

  @Column({ type: 'varchar', length: 40, name: 'subject_id' })
  subjectId!: string;

  /** What it was done with, as canonical JSON (RFC 8785). */
  @Column({ type: 'text' })
  detail!: string;

  @Column({ type: 'varchar', length: 64, name: 'previous_hash' })
  previousHash!: string;

  @Column({ type: 'varchar', length: 64 })
  hash!: string;
}

/** The end of the chain, so that cutting off the newest entries is found too. One row, id 1. */
@Entity('ledger_head')
export class LedgerHeadEntity {
  @PrimaryColumn({ type: 'integer' })
  id!: number;

  @Column({ type: 'integer' })
  number!: number;

  @Column({ type: 'varchar', length: 64 })
  hash!: string;
}
