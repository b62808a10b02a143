import { Column, Entity, JoinColumn, ManyToOne, PrimaryColumn } from 'typeorm';
import { PersonEntity } from '../../people/person.entity.js';
import type { DigestChoice } from '../../rules/reminders/digest-choice.js';

/** Where a person gets mail, and how much of it. A person without a row gets none. */
@Entity('mail_choice')
export class MailChoiceEntity {
  @PrimaryColumn({ type: 'integer', name: 'person_id' })
  personId!: number;

  @ManyToOne(() => PersonEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'person_id', foreignKeyConstraintName: 'fk_mail_choice_person' })
  person?: PersonEntity;

  @Column({ type: 'varchar', length: 254, nullable: true })
  address!: string | null;

  @Column({ type: 'varchar', length: 20 })
  digest!: DigestChoice;

  /** Whether dangers and flagged bookings are told at once. */
  @Column({ type: 'boolean' })
  urgent!: boolean;

  /** The stores the person hears of; null for all. */
  @Column({ type: 'simple-json', name: 'store_ids', nullable: true })
  storeIds!: number[] | null;

  @Column({ type: 'integer' })
  version!: number;
}
