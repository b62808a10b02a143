import { ApiProperty } from '@nestjs/swagger';
import { MAIL_FAULTS, MAIL_STATES, type MailFault, type MailState } from './mail.entity.js';

/** A mail of the outbox, without what it says. */
export class MailView {
  id!: number;
  toName!: string;
  toAddress!: string;
  subject!: string;
  /** Its Message-ID (RFC 5322), which it keeps however often it is sent. */
  messageId!: string;
  @ApiProperty({ enum: MAIL_STATES })
  state!: MailState;
  decidedAt!: string;
  /** How often it was tried. */
  tries!: number;
  /** When it is tried next; null of what is not waiting. */
  nextTryAt!: string | null;
  /** When it was sent, given up or replaced by newer mail; null of what is waiting. */
  settledAt!: string | null;
  /** Why the last try failed; null where none did. */
  @ApiProperty({ enum: MAIL_FAULTS, nullable: true })
  fault!: MailFault | null;
  /** What the mail server said last, or what kept it from being asked. */
  lastAnswer!: string | null;
}

/** Mail in one state: how much there is, and the first of it. */
export class MailPileView {
  total!: number;
  mails!: MailView[];
}

/** The outbox. */
export class OutboxView {
  /** Whether a mail server is set. Without one nothing is sent. */
  open!: boolean;
  /** What was given up, newest first. */
  dead!: MailPileView;
  /** What waits, in the order in which it was decided on. */
  waiting!: MailPileView;
  /** What was sent or replaced, newest first. */
  settled!: MailPileView;
}
