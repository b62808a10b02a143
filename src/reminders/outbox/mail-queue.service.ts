import { Inject, Injectable } from '@nestjs/common';
import { randomUUID } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import { Clock } from '../../clock.js';
import { SETTINGS, type Settings } from '../../settings.js';
import { UnitOfWork } from '../../storage/unit-of-work.js';
import type { Delivery } from './mail-line.js';
import { MailEntity, type MailFault } from './mail.entity.js';
import { later, nextTryAt } from './next-try.js';

/** How long a server may have a mail in hand. A try ends long before: see `SmtpLimits`. */
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

  /** Takes the next mail that is due in hand, urgent mail first; undefined when there is none. */
  claim(): Promise<MailEntity | undefined> {
    return this.unitOfWork.run(async (manager) => {
      const now = this.clock.now();
      const [row] = await manager.query<{ id: number }[]>(
        `SELECT id FROM mail
         WHERE state = 'waiting' AND next_try_at <= $1 AND (claimed_until IS NULL OR claimed_until < $1)
         ORDER BY CASE kind WHEN 'urgent' THEN 0 ELSE 1 END, id LIMIT 1${this.unitOfWork.skippingTaken}`,
        [now],
      );
      if (!row) return undefined;
      const claim = { claimedUntil: later(now, CLAIM_MS), claimedBy: this.me };
      await manager.update(MailEntity, { id: row.id }, claim);
      return (await manager.findOneBy(MailEntity, { id: row.id })) ?? undefined;
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
