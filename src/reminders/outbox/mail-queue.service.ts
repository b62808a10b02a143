import { Inject, Injectable } from '@nestjs/common';
import { randomUUID } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import { Clock } from '../../clock.js';
import { SETTINGS, type Settings } from '../../settings.js';
import { UnitOfWork } from '../../storage/unit-of-work.js';
import type { Delivery } from './mail-line.js';
import { addressNow } from './address-now.js';
import { MailEntity, type MailFault } from './mail.entity.js';
import { later, LONGEST_PAUSE_MS, nextTryAt } from './next-try.js';

/**
 * How long a server may have a mail in hand. A try ends long before: see `SmtpLimits`. The clocks of servers on one
 * database may differ by the rest.
 */
const CLAIM_MS = 180_000;

/** Which mail is tried next, by which of the servers, and what became of it. */
@Injectable()
export class MailQueue {
  /** Unlike that of any other server, and of this one before it was started again. */
  private readonly me = randomUUID();

  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly clock: Clock,
    @Inject(SETTINGS) private readonly settings: Settings,
  ) {}

  /**
   * Frees what a killed server had in hand. On the embedded database there is one server, so it need not wait for the
   * claims to run out; on PostgreSQL another server may be at it.
   */
  async freeClaims(): Promise<void> {
    if (this.settings.databaseUrl !== undefined) return;
    await this.unitOfWork.run((manager) =>
      manager.update(MailEntity, { state: 'waiting' }, { claimedUntil: null, claimedBy: null }),
    );
  }

  /**
   * Takes the next mail that is due in hand, urgent mail first, to the address that its person has now; undefined when
   * there is none. Mail to nobody any more is given up on the way.
   */
  claim(): Promise<MailEntity | undefined> {
    return this.unitOfWork.run(async (manager) => {
      const now = this.clock.now();
      for (;;) {
        const mail = await this.nextDue(manager, now);
        if (!mail) return undefined;
        const toAddress = await addressNow(manager, mail);
        if (toAddress !== undefined) return this.take(manager, { ...mail, toAddress }, now);
        const givenUp = { state: 'dead', fault: 'nobodyThere', lastAnswer: null, settledAt: now } as const;
        await manager.update(MailEntity, { id: mail.id }, givenUp);
      }
    });
  }

  /** Writes down what became of a mail in hand. Where the claim ran out and another server took it, that one's word counts. */
  async settle({ id }: { id: number }, { fault, answer }: Delivery): Promise<void> {
    await this.unitOfWork.run(async (manager) => {
      await this.unitOfWork.lock(manager, 'mail', [id]);
      const mail = await manager.findOneBy(MailEntity, { id, state: 'waiting', claimedBy: this.me });
      if (!mail) return;
      await write(manager, mail, { fault, answer, now: this.clock.now() });
    });
  }

  /**
   * What was never tried is due whenever it was decided. A wait that is longer than any we make comes from a clock that
   * was set back since, and is over.
   */
  private async nextDue(manager: EntityManager, now: string): Promise<MailEntity | undefined> {
    const [row] = await manager.query<{ id: number }[]>(
      `SELECT id FROM mail
       WHERE state = 'waiting' AND (tries = 0 OR next_try_at <= $1 OR next_try_at > $2)
         AND (claimed_until IS NULL OR claimed_until < $1 OR claimed_until > $3)
       ORDER BY CASE kind WHEN 'urgent' THEN 0 ELSE 1 END, id LIMIT 1${this.unitOfWork.skippingTaken}`,
      [now, later(now, LONGEST_PAUSE_MS), later(now, 2 * CLAIM_MS)],
    );
    return row && ((await manager.findOneBy(MailEntity, { id: row.id })) ?? undefined);
  }

  private async take(manager: EntityManager, mail: MailEntity, now: string): Promise<MailEntity> {
    const { id, toAddress } = mail;
    const claim = { claimedUntil: later(now, CLAIM_MS), claimedBy: this.me };
    await manager.update(MailEntity, { id }, { ...claim, toAddress });
    return { ...mail, ...claim };
  }
}

async function write(
  manager: EntityManager,
  { id, tries: before, giveUpAt }: MailEntity,
  { fault, answer, now }: { fault: MailFault | null; answer: string; now: string },
): Promise<void> {
  const tries = before + 1;
  const told = { tries, fault, lastAnswer: answer, claimedUntil: null, claimedBy: null };
  if (fault === null) {
    await manager.update(MailEntity, { id }, { ...told, state: 'sent', settledAt: now });
    return;
  }
  const next = nextTryAt({ fault, tries, now, giveUpAt });
  const then = next ? { nextTryAt: next } : { state: 'dead' as const, settledAt: now };
  await manager.update(MailEntity, { id }, { ...told, ...then });
}
