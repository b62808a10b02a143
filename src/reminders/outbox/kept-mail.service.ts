import { Injectable } from '@nestjs/common';
import { In, type FindOptionsWhere } from 'typeorm';
import { Ledger } from '../../ledger/ledger.service.js';
import type { Actor } from '../../people/actor.js';
import { Problem } from '../../problem.js';
import { Reads } from '../../storage/reads.js';
import { MailEntity } from './mail.entity.js';
import { giveUpAt } from './next-try.js';
import type { MailPileView, MailView, OutboxView } from './outbox.dto.js';
import { Outbox } from './post-mail.js';

/** So much of each pile is shown. */
const MOST_SHOWN = 100;

/** A mail with what it says. */
export interface WholeMail extends MailView {
  readonly personId: number;
  readonly plainText: string;
  readonly html: string;
}

/** Looks through the mail that was decided on, and sends what was given up again. */
@Injectable()
export class KeptMail {
  constructor(
    private readonly ledger: Ledger,
    private readonly reads: Reads,
    private readonly outbox: Outbox,
  ) {}

  /** What was given up, what waits, and what was sent lately. */
  async list(): Promise<OutboxView> {
    return {
      open: this.outbox.open,
      dead: await this.pile({ state: 'dead' }, 'DESC'),
      waiting: await this.pile({ state: 'waiting' }, 'ASC'),
      settled: await this.pile({ state: In(['sent', 'replaced']) }, 'DESC'),
    };
  }

  /** Mail that arrived, newest first: a person's, or everyone's. */
  arrived(personId?: number): Promise<MailPileView> {
    return this.pile({ state: 'sent', ...(personId === undefined ? {} : { personId }) }, 'DESC');
  }

  /**
   * One mail with what it says.
   * @throws Problem `not_found`.
   */
  async whole(id: number): Promise<WholeMail> {
    const mail = await this.reads.manager.findOneBy(MailEntity, { id });
    if (!mail) throw noSuchMail(id);
    const { personId, plainText, html } = mail;
    return { ...asView(mail), personId, plainText, html };
  }

  /**
   * Puts a mail that was given up back in the outbox: the same mail, with its Message-ID, tried anew for as long. It
   * goes to the address that its person has by then.
   * @throws Problem `not_found`, `not_allowed_now` of one that was not given up.
   */
  resend(actor: Actor, id: number): Promise<void> {
    return this.ledger.change(actor, async (change) => {
      await change.lock('mail', [id]);
      const mail = await change.manager.findOneBy(MailEntity, { id });
      if (!mail) throw noSuchMail(id);
      if (mail.state !== 'dead')
        throw new Problem('not_allowed_now', 'Only mail that was given up is sent again.');
      const { personId, subject, messageId } = mail;
      const anew = {
        tries: 0,
        nextTryAt: change.at,
        giveUpAt: giveUpAt(change.at),
        settledAt: null,
      };
      await change.manager.update(MailEntity, { id }, { ...anew, state: 'waiting' });
      // No address: the history can never forget one.
      const detail = { mailId: id, subject, messageId };
      change.note({ action: 'mail.resent', subjectKind: 'person', subjectId: personId, detail });
    });
  }

  private async pile(where: FindOptionsWhere<MailEntity>, order: 'ASC' | 'DESC'): Promise<MailPileView> {
    const [rows, total] = await this.reads.manager.findAndCount(MailEntity, {
      select: SHOWN,
      where,
      order: { ...(order === 'DESC' ? { settledAt: order } : {}), id: order },
      take: MOST_SHOWN,
    });
    return { total, mails: rows.map(asView) };
  }
}

/** The columns of a list: not the texts, which are long. */
const SHOWN: (keyof MailEntity)[] = [
  'id',
  'toName',
  'toAddress',
  'subject',
  'messageId',
  'state',
  'decidedAt',
  'tries',
  'nextTryAt',
  'settledAt',
  'fault',
  'lastAnswer',
];

function asView(mail: MailEntity): MailView {
  const { id, toName, toAddress, subject, messageId, state, decidedAt, tries, settledAt } = mail;
  return {
    ...{ id, toName, toAddress, subject, messageId, state, decidedAt, tries, settledAt },
    nextTryAt: state === 'waiting' ? mail.nextTryAt : null,
    fault: mail.fault,
    lastAnswer: mail.lastAnswer,
  };
}

function noSuchMail(id: number): Problem {
  return new Problem('not_found', `There is no mail with the number ${id}.`);
}
