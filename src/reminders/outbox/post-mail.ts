import { Inject, Injectable } from '@nestjs/common';
import { randomUUID } from 'node:crypto';
import { In, MoreThanOrEqual, type EntityManager } from 'typeorm';
import { SETTINGS, type Settings } from '../../settings.js';
import { Reads } from '../../storage/reads.js';
import { UnitOfWork } from '../../storage/unit-of-work.js';
import { MailEntity, type MailKind } from './mail.entity.js';
import { giveUpAt } from './next-try.js';

/** Mail to put in the outbox. */
export interface NewMail {
  readonly kind: MailKind;
  /** What makes it this mail and no other, such as `digest:12:2026-11-26`. */
  readonly subjectKey: string;
  readonly personId: number;
  readonly toName: string;
  /** One bare address, as `bareAddress` gives it. */
  readonly toAddress: string;
  readonly subject: string;
  readonly plainText: string;
  readonly html: string;
  /** The instant of the decision, which becomes the date of the mail. */
  readonly at: string;
}

const MOST_NAME = 120;
const MOST_SUBJECT = 200;

/** Where mail waits that was decided on, until a mail server has taken it. */
@Injectable()
export class Outbox {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly reads: Reads,
    @Inject(SETTINGS) private readonly settings: Settings,
  ) {}

  /** Whether mail may be decided on: a mail server is set, or this is the demo with its local mailbox. */
  get open(): boolean {
    return this.settings.demo || this.settings.mail !== undefined;
  }

  /**
   * Puts a mail in the outbox, in the transaction of whatever decides on it, and gives its number. Its Message-ID is
   * made here and never again.
   */
  async post(manager: EntityManager, { at, ...mail }: NewMail): Promise<number> {
    const row = manager.create(MailEntity, {
      ...mail,
      toName: oneLine(mail.toName, MOST_NAME),
      subject: oneLine(mail.subject, MOST_SUBJECT),
      messageId: this.newMessageId(),
      decidedAt: at,
      state: 'waiting',
      tries: 0,
      nextTryAt: at,
      giveUpAt: giveUpAt(at),
      claimedUntil: null,
      claimedBy: null,
      settledAt: null,
      fault: null,
      lastAnswer: null,
    });
    await manager.insert(MailEntity, row);
    return row.id;
  }

  /**
   * Withdraws what still waits for a person or was given up, because newer mail says it again, and gives the numbers of
   * it. What a server has in hand is left alone.
   */
  async replaceUnsent(
    manager: EntityManager,
    { personId, kind, at }: { personId: number; kind: MailKind; at: string },
  ): Promise<number[]> {
    const rows = await manager.query<{ id: number }[]>(
      `SELECT id FROM mail WHERE person_id = $1 AND kind = $2 AND state IN ('waiting', 'dead')
         AND (claimed_until IS NULL OR claimed_until < $3) ORDER BY id${this.unitOfWork.skippingTaken}`,
      [personId, kind, at],
    );
    const ids = rows.map(({ id }) => id);
    if (ids.length > 0)
      await manager.update(MailEntity, { id: In(ids) }, { state: 'replaced', settledAt: at });
    return ids;
  }

  /** How many mails were given up since an instant and not sent again. */
  givenUpSince(instant: string): Promise<number> {
    return this.reads.manager.countBy(MailEntity, { state: 'dead', settledAt: MoreThanOrEqual(instant) });
  }

  /** RFC 5322, 3.6.4: unlike any other in the world, with a domain of ours on the right. */
  private newMessageId(): string {
    const domain = this.settings.mail?.from.split('@').at(-1) ?? 'tackleroom.example';
    return `<${randomUUID()}@${domain}>`;
  }
}

/** Text for a header: nothing in it can end the line. */
function oneLine(text: string, most: number): string {
  const line = text.replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, ' ').trim();
  const letters = [...line]; // whole characters: half of one cannot be written
  return letters.length <= most
    ? line
    : `${letters
        .slice(0, most - 1)
        .join('')
        .trimEnd()}…`;
}
