import { Injectable } from '@nestjs/common';
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
    });
  }
}
