import { Inject, Injectable } from '@nestjs/common';
import { createHash } from 'node:crypto';
import { IsNull } from 'typeorm';
import { Catalogue } from '../../catalogue/catalogue.js';
import { Reads } from '../../storage/reads.js';
import { SETTINGS, type Settings } from '../../settings.js';
import { StoresService } from '../../stores/stores.service.js';
import { isToldOfDue } from '../preferences/mail-person.js';
import { MailChoices } from '../preferences/mail-choices.service.js';
import { publicAddress } from '../public-address.js';
import { CalendarFeedEntity } from './calendar-feed.entity.js';
import { calendarText } from './calendar-text.js';
import type { FeedStore } from './feed-day.js';
import { FeedDays } from './feed-days.service.js';
import { secretHash, secretIn } from './feed-secret.js';
import { FeedState } from './feed-state.service.js';
import { KeptCalendars, type CalendarFile } from './kept-calendars.js';

interface Shown {
  readonly name: string;
  readonly stores: readonly FeedStore[];
}

/** Reads a calendar by its secret. */
@Injectable()
export class FeedReader {
  private readonly kept = new KeptCalendars();

  constructor(
    private readonly reads: Reads,
    private readonly days: FeedDays,
    private readonly state: FeedState,
    private readonly stores: StoresService,
    private readonly choices: MailChoices,
    private readonly catalogue: Catalogue,
    @Inject(SETTINGS) private readonly settings: Settings,
  ) {}

  /**
   * The calendar that the file of an address names. Undefined when there never was one, when it was revoked, when the
   * account of its owner is closed, or when its owner is no longer someone who is told what falls due.
   */
  async open(file: string): Promise<CalendarFile | undefined> {
    const secret = secretIn(file);
    if (secret === undefined) return undefined;
    const feed = await this.reads.manager.findOneBy(CalendarFeedEntity, {
      secretHash: secretHash(secret),
      revokedAt: IsNull(),
    });
    const shown = feed ? await this.shownStores(feed) : undefined;
    return shown && this.calendarOf(shown);
  }

  private async calendarOf(shown: Shown): Promise<CalendarFile> {
    const feed = JSON.stringify([shown.name, shown.stores.map(({ id }) => id)]);
    // Read before the days: what happens meanwhile makes the next look write the calendar again.
    const state = await this.state.of(shown.stores);
    const kept = this.kept.find(feed, state);
    if (kept) return kept;
    const file = await this.write(shown);
    if (state !== undefined) this.kept.keep(feed, state, file);
    return file;
  }

  private async write({ name, stores }: Shown): Promise<CalendarFile> {
    const text = calendarText(await this.days.of(stores), {
      name,
      address: publicAddress(this.settings),
      nameOf: (kind) => this.catalogue.kinds().find((known) => known.kind === kind)?.name ?? kind,
    });
    return { text, etag: `"${createHash('sha256').update(text).digest('base64url')}"` };
  }

  private async shownStores({ personId, storeId }: CalendarFeedEntity): Promise<Shown | undefined> {
    const person = (await this.choices.people()).find((one) => one.personId === personId);
    if (!person?.active || !isToldOfDue(person.roles)) return undefined;
    const stores = await this.stores.list();
    const heard = storeId === null ? person.storeIds : [storeId];
    const shown = stores.filter(({ id }) => heard?.includes(id) ?? true);
    return { name: storeId === null ? 'Gear due' : `Gear due, ${shown[0]?.name ?? ''}`, stores: shown };
  }
}
