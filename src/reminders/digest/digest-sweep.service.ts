import { Inject, Injectable } from '@nestjs/common';
import { Catalogue } from '../../catalogue/catalogue.js';
import { Clock } from '../../clock.js';
import { daysBetween } from '../../rules/calendar/day.js';
import { digestInstant } from '../../rules/reminders/digest-time.js';
import { SETTINGS, type Settings } from '../../settings.js';
import { Reads } from '../../storage/reads.js';
import { StoresService } from '../../stores/stores.service.js';
import { DueDiary } from '../diary/diary.service.js';
import { dueSince } from '../due-index/due-since.js';
import { Outbox } from '../outbox/post-mail.js';
import { MailChoices } from '../preferences/mail-choices.service.js';
import { ReminderRules } from '../preferences/reminder-rules.service.js';
import { publicAddress } from '../public-address.js';
import { DigestWriter, type DigestReader, type DigestRound } from './digest-writer.service.js';
import { heardStores } from './heard-stores.js';
import { decidedToday } from './past-runs.js';
import { plannedThrough, storeVisits } from './store-visits.js';
import type { StoreToday } from './telling-stores.js';

/** Tells everybody once a day what falls due, at the time of day that their first store has chosen. */
@Injectable()
export class DigestSweep {
  constructor(
    private readonly outbox: Outbox,
    private readonly choices: MailChoices,
    private readonly rules: ReminderRules,
    private readonly stores: StoresService,
    private readonly diary: DueDiary,
    private readonly writer: DigestWriter,
    private readonly catalogue: Catalogue,
    private readonly reads: Reads,
    private readonly clock: Clock,
    @Inject(SETTINGS) private readonly settings: Settings,
  ) {}

  /**
   * Decides the digests whose time has come and that were not decided yet, each in a transaction of its own, so that
   * the next run goes on where this one was cut off. Gives how many mails there are of it.
   * @throws AggregateError of the digests that could not be made, after all the others were.
   */
  async run(): Promise<number> {
    if (!this.outbox.open) return 0;
    const stores = await this.storesToday();
    const readers = await this.readers(stores);
    if (readers.length === 0) return 0;
    const round = await this.round(readers, stores);
    const failures: unknown[] = [];
    let mails = 0;
    for (const reader of readers) {
      try {
        if (await this.writer.write(reader, round)) mails += 1;
      } catch (error) {
        failures.push(error);
      }
    }
    if (failures.length > 0)
      throw new AggregateError(failures, `Digests could not be made: ${failures.map(String).join('; ')}`);
    return mails;
  }

  private async storesToday(): Promise<ReadonlyMap<number, StoreToday>> {
    const rules = await this.rules.all();
    const stores = await this.stores.list();
    return new Map(
      stores.flatMap(({ id, timeZone }) => {
        const rule = rules.get(id);
        const today = this.clock.today(timeZone);
        return rule ? [[id, { storeId: id, timeZone, today, rule }] as const] : [];
      }),
    );
  }

  /** Those whose digest of today is to be made. */
  private async readers(stores: ReadonlyMap<number, StoreToday>): Promise<DigestReader[]> {
    const people = await this.choices.people();
    const heardBy = heardStores(people, [...stores.keys()]);
    const now = this.clock.now();
    const ready = people.flatMap((person) => {
      const { personId, address } = person;
      const heard = heardBy.get(personId) ?? [];
      const first = stores.get(heard[0]?.storeId ?? 0);
      if (!first || address === null || !isTime(first, now)) return [];
      return [{ personId, person: { ...person, address }, heard, today: first.today }];
    });
    const decided = await decidedToday(this.reads.manager, ready);
    return ready.filter(({ personId }) => !decided.has(personId));
  }

  private async round(
    readers: readonly DigestReader[],
    stores: ReadonlyMap<number, StoreToday>,
  ): Promise<DigestRound> {
    const storeIds = [...new Set(readers.flatMap(({ heard }) => heard.map(({ storeId }) => storeId)))];
    const heard = storeIds.flatMap((id) => stores.get(id) ?? []);
    const ahead = heard.map((store) => daysBetween(store.today, plannedThrough(store)));
    const names = new Map(this.catalogue.kinds().map(({ kind, name }) => [kind, name]));
    const at = this.clock.now(); // before looking: what comes meanwhile was not told
    const entries = await this.diary.entries({ storeIds, daysAhead: Math.max(...ahead) });
    return {
      at,
      entries,
      since: await dueSince(this.reads.manager, entries, at),
      visits: storeVisits(entries, heard),
      stores,
      kindName: (kind) => names.get(kind) ?? kind,
      address: publicAddress(this.settings),
    };
  }
}

function isTime({ today, timeZone, rule }: StoreToday, now: string): boolean {
  return digestInstant(today, rule.digestTime, timeZone) <= now;
}
