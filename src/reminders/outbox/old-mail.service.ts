import { Injectable } from '@nestjs/common';
import { In, LessThan, Not } from 'typeorm';
import { Clock } from '../../clock.js';
import { UnitOfWork } from '../../storage/unit-of-work.js';
import { MailEntity } from './mail.entity.js';
import { later } from './next-try.js';

/** How long what a mail said can be read here. Common practice, no source. */
const KEPT_MS = 90 * 24 * 3_600_000;

/** Keeps the outbox from growing by what nobody reads any more. */
@Injectable()
export class OldMail {
  private emptiedOn = '';

  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  /**
   * Once a day, takes the texts out of mail that was sent or replaced 90 days ago. That it was sent, to whom and about
   * what stays; mail that was given up stays whole until somebody sees to it.
   */
  async empty(): Promise<void> {
    const now = this.clock.now();
    const today = now.slice(0, 10);
    if (today === this.emptiedOn) return;
    const old = { state: In(['sent', 'replaced']), settledAt: LessThan(later(now, -KEPT_MS)), html: Not('') };
    await this.unitOfWork.run((manager) => manager.update(MailEntity, old, { plainText: '', html: '' }));
    this.emptiedOn = today;
  }
}
