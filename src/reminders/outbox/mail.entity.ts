import { Column, Entity, Index, JoinColumn, ManyToOne, PrimaryGeneratedColumn, Unique } from 'typeorm';
import { PersonEntity } from '../../people/person.entity.js';

/** Waiting to be sent, taken by the mail server, given up, or overtaken by the next digest before it could be sent. */
export const MAIL_STATES = ['waiting', 'sent', 'dead', 'replaced'] as const;
export type MailState = (typeof MAIL_STATES)[number];

/** Why a try failed. */
export const MAIL_FAULTS = [
  'addressRefused',
  'mailRefused',
  'senderRefused',
  'notYet',
  'signInRefused',
  'notPrivate',
  'noAnswer',
  'lineLost',
  'nobodyThere',
] as const;
export type MailFault = (typeof MAIL_FAULTS)[number];

export type MailKind = 'digest' | 'urgent';

/** Mail that was decided on: to one person, as it will be sent, however often it has to be tried. */
@Entity('mail')
@Unique('uq_mail_subject_key', ['subjectKey'])
@Unique('uq_mail_message_id', ['messageId'])
@Index('ix_mail_state', ['state', 'nextTryAt'])
@Index('ix_mail_person', ['personId', 'kind'])
export class MailEntity {
  @PrimaryGeneratedColumn({ type: 'integer' })
  id!: number;

  @Column({ type: 'varchar', length: 20 })
  kind!: MailKind;

  /** What makes it this mail and no other, such as `digest:12:2026-11-26`: it can be decided on once only. */
  @Column({ type: 'varchar', length: 80, name: 'subject_key' })
  subjectKey!: string;

  @Column({ type: 'integer', name: 'person_id' })
  personId!: number;

  @ManyToOne(() => PersonEntity, { onDelete: 'RESTRICT' })
  @JoinColumn({ name: 'person_id', foreignKeyConstraintName: 'fk_mail_person' })
  person?: PersonEntity;

  @Column({ type: 'varchar', length: 120, name: 'to_name' })
  toName!: string;

  @Column({ type: 'varchar', length: 254, name: 'to_address' })
  toAddress!: string;

  @Column({ type: 'varchar', length: 200 })
  subject!: string;

  @Column({ type: 'text', name: 'plain_text' })
  plainText!: string;

  @Column({ type: 'text' })
  html!: string;

  /** RFC 5322 Message-ID with its angle brackets. It never changes, so that a mail that arrives twice is known as one. */
  @Column({ type: 'varchar', length: 300, name: 'message_id' })
  messageId!: string;

  @Column({ type: 'varchar', length: 24, name: 'decided_at' })
  decidedAt!: string;

  @Column({ type: 'varchar', length: 10 })
  state!: MailState;

  @Column({ type: 'integer' })
  tries!: number;

  @Column({ type: 'varchar', length: 24, name: 'next_try_at' })
  nextTryAt!: string;

  /** When a try that fails is the last one. */
  @Column({ type: 'varchar', length: 24, name: 'give_up_at' })
  giveUpAt!: string;

  /** Until when one server has it in hand; after that it is taken for dead and another may try. */
  @Column({ type: 'varchar', length: 24, name: 'claimed_until', nullable: true })
  claimedUntil!: string | null;

  @Column({ type: 'varchar', length: 40, name: 'claimed_by', nullable: true })
  claimedBy!: string | null;

  /** When it was sent, given up or replaced. */
  @Column({ type: 'varchar', length: 24, name: 'settled_at', nullable: true })
  settledAt!: string | null;

  /** Why the last try failed; null before the first, and of mail that was taken. */
  @Column({ type: 'varchar', length: 20, nullable: true })
  fault!: MailFault | null;

  /** What the mail server said last, or what kept it from being asked. */
  @Column({ type: 'varchar', length: 500, name: 'last_answer', nullable: true })
  lastAnswer!: string | null;
}
