import { Inject, Injectable } from '@nestjs/common';
import { Catalogue } from '../../catalogue/catalogue.js';
import { Clock } from '../../clock.js';
import { Ledger } from '../../ledger/ledger.service.js';
import { SETTINGS, type Settings } from '../../settings.js';
import { isUniqueViolation } from '../../storage/engine-errors.js';
import { Reads } from '../../storage/reads.js';
import { StoresService } from '../../stores/stores.service.js';
import { Outbox } from '../outbox/post-mail.js';
import { MailChoices } from '../preferences/mail-choices.service.js';
import { publicAddress } from '../public-address.js';
import { untold } from './told-flags.js';
import { UnfitBookings } from './unfit-bookings.service.js';
import { UrgentWriter } from './urgent-writer.service.js';

/** Tells at once of dangers found and of booked gear that is not fit any more. */
@Injectable()
export class UrgentSweep {
  /** How things stood when they were looked at last by this process. */
  private lookedAt: string | undefined;

  constructor(
    private readonly outbox: Outbox,
    private readonly choices: MailChoices,
    private readonly stores: StoresService,
    private readonly unfit: UnfitBookings,
    private readonly writer: UrgentWriter,
    private readonly ledger: Ledger,
    private readonly catalogue: Catalogue,
    private readonly reads: Reads,
    private readonly clock: Clock,
    @Inject(SETTINGS) private readonly settings: Settings,
  ) {}

  /**
   * Decides the mails about what is new, each thing once, and gives how many they are. Looks at nothing when nothing
   * was changed and no store's day has turned since it looked last.
   */
  async run(): Promise<number> {
    if (!this.outbox.open) return 0;
    const standing = await this.standing();
    if (standing === this.lookedAt) return 0;
    try {
      const mails = await this.look();
      this.lookedAt = standing;
      return mails;
    } catch (error) {
      if (isToldByAnother(error)) return 0;
      throw error;
    }
  }

  /** What every notice and every unfit booking comes from: a change, or a new day. Read before the look, never after. */
  private async standing(): Promise<string> {
    const [newest] = await this.ledger.newest(1);
    const stores = await this.stores.list();
    const days = stores.map(({ id, timeZone }) => `${id} ${this.clock.today(timeZone)}`);
    return [newest?.number ?? 0, ...days].join('; ');
  }

  private async look(): Promise<number> {
    const unfit = await this.unfit.now();
    const jobIds = (await untold(this.reads.manager, unfit)).map(({ jobId }) => jobId);
    const names = new Map(this.catalogue.kinds().map(({ kind, name }) => [kind, name]));
    return this.writer.write({
      people: await this.choices.people(),
      storeIds: (await this.stores.list()).map(({ id }) => id),
      unfit,
      replacements: await this.unfit.replacements([...new Set(jobIds)]),
      kindName: (kind) => names.get(kind) ?? kind,
      address: publicAddress(this.settings),
    });
  }
}

function isToldByAnother(error: unknown): boolean {
  return isUniqueViolation(error, { table: 'told_flag', columns: ['job_id', 'item_id'] });
}
