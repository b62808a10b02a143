import { Injectable } from '@nestjs/common';
import { Clock } from '../../clock.js';
import { storesWithGear } from '../../register/stores-with-gear.js';
import { Reads } from '../../storage/reads.js';
import { findStores } from '../../stores/find-store.js';
import { Outbox } from '../outbox/post-mail.js';
import { MailChoices } from './mail-choices.service.js';
import { mailWarnings, type MailWarning } from './mail-warnings.js';

/** What keeps overdue gear from being told as it should. */
@Injectable()
export class MailWarnings {
  constructor(
    private readonly reads: Reads,
    private readonly choices: MailChoices,
    private readonly outbox: Outbox,
    private readonly clock: Clock,
  ) {}

  /** The warnings as things stand; none where all is well. */
  async list(): Promise<MailWarning[]> {
    const { manager } = this.reads;
    const stores = await findStores(manager);
    const kept = await storesWithGear(
      manager,
      stores.map(({ id }) => id),
    );
    return mailWarnings({
      isOpen: this.outbox.open,
      stores: stores.filter(({ id }) => kept.includes(id)),
      people: await this.choices.people(),
      givenUp: await this.outbox.givenUpSince(aWeekBefore(this.clock.now())),
    });
  }
}

/** Mail given up longer ago is on the page Outbox still, but a warning that never goes is not read. */
function aWeekBefore(instant: string): string {
  return new Date(Date.parse(instant) - 7 * 24 * 3_600_000).toISOString();
}
