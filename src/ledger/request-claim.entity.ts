import { Column, Entity, Index, PrimaryColumn } from 'typeorm';

/** The mark that a request has taken effect, written in the transaction of its effect: sent again, it is answered from here. */
@Entity('request_claim')
export class RequestClaimEntity {
  /** SHA-256 over person and Idempotency-Key. */
  @PrimaryColumn({ type: 'varchar', length: 64 })
  id!: string;

  /** SHA-256 over method, address and body: the same key with another request is refused. */
  @Column({ type: 'varchar', length: 64, name: 'request_hash' })
  requestHash!: string;

  /** The answer as JSON, once it is known. */
  @Column({ type: 'text', nullable: true })
  answer!: string | null;

  @Index('ix_request_claim_claimed_at')
  @Column({ type: 'varchar', length: 24, name: 'claimed_at' })
  claimedAt!: string;
}
