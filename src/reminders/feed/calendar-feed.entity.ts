import { Column, Entity, Index, JoinColumn, ManyToOne, PrimaryGeneratedColumn, Unique } from 'typeorm';
import { PersonEntity } from '../../people/person.entity.js';
import { StoreEntity } from '../../stores/store.entity.js';

/** A secret address that a calendar program reads. Only the fingerprint of the secret is kept. */
@Entity('calendar_feed')
@Unique('uq_calendar_feed_secret_hash', ['secretHash'])
@Index('ix_calendar_feed_person', ['personId'])
export class CalendarFeedEntity {
  @PrimaryGeneratedColumn({ type: 'integer' })
  id!: number;

  /** SHA-256 of the secret, in hexadecimal. */
  @Column({ type: 'varchar', length: 64, name: 'secret_hash' })
  secretHash!: string;

  /** Whose it is: it goes dark when this person's account is closed. */
  @Column({ type: 'integer', name: 'person_id' })
  personId!: number;

  @ManyToOne(() => PersonEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'person_id', foreignKeyConstraintName: 'fk_calendar_feed_person' })
  person?: PersonEntity;

  /** The store it shows; null for every store that its owner hears of. */
  @Column({ type: 'integer', name: 'store_id', nullable: true })
  storeId!: number | null;

  @ManyToOne(() => StoreEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'store_id', foreignKeyConstraintName: 'fk_calendar_feed_store' })
  store?: StoreEntity;

  @Column({ type: 'varchar', length: 24, name: 'created_at' })
  createdAt!: string;

  @Column({ type: 'varchar', length: 24, name: 'revoked_at', nullable: true })
  revokedAt!: string | null;
}
