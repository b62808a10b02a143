import { Column, Entity, JoinColumn, ManyToOne, PrimaryGeneratedColumn, Unique } from 'typeorm';
import { PersonEntity } from '../../people/person.entity.js';
import { MailEntity } from '../outbox/mail.entity.js';
import type { ToldStore } from './told-stores.js';

/** That it was decided what a person is told on a day: once, whichever server comes first. */
@Entity('digest_run')
@Unique('uq_digest_run_person_id_on_day', ['personId', 'onDay'])
export class DigestRunEntity {
  @PrimaryGeneratedColumn({ type: 'integer' })
  id!: number;

  @Column({ type: 'integer', name: 'person_id' })
  personId!: number;

  @ManyToOne(() => PersonEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'person_id', foreignKeyConstraintName: 'fk_digest_run_person' })
  person?: PersonEntity;

  @Column({ type: 'date', name: 'on_day' })
  onDay!: string;

  @Column({ type: 'varchar', length: 24, name: 'decided_at' })
  decidedAt!: string;

  /** The stores it was told of: through which of their days, and whether with what is still to fall due. */
  @Column({ type: 'simple-json' })
  told!: ToldStore[];

  /** The mail; null where there was nothing to say. */
  @Column({ type: 'integer', name: 'mail_id', nullable: true })
  mailId!: number | null;

  @ManyToOne(() => MailEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'mail_id', foreignKeyConstraintName: 'fk_digest_run_mail' })
  mail?: MailEntity;
}
