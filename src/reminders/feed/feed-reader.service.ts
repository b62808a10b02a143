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

/** A calendar as it is sent. */
export interface CalendarFile {
  readonly text: string;
  /** Its fingerprint: the same as long as not a letter changes (RFC 9110 section 8.8.3). */
  readonly etag: string;
}

/** Reads a calendar by its secret. */
@Injectable()
export class FeedReader {
  constructor(
    private readonly reads: Reads,
    private readonly days: FeedDays,
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
    if (shown === undefined) return undefined;
    const text = calendarText(await this.days.of(shown.stores), {
      name: shown.name,
      address: publicAddress(this.settings),
      nameOf: (kind) => this.catalogue.kinds().find((known) => known.kind === kind)?.name ?? kind,
    });
    return { text, etag: `"${createHash('sha256').update(text).digest('base64url')}"` };
  }

  private async shownStores({
    personId,
    storeId,
  }: CalendarFeedEntity): Promise<{ name: string; stores: readonly FeedStore[] } | undefined> {
    const person = (await this.choices.people()).find((one) => one.personId === personId);
    if (!person?.active || !isToldOfDue(person.roles)) return undefined;
    const stores = await this.stores.list();
    const heard = storeId === null ? person.storeIds : [storeId];
    const shown = stores.filter(({ id }) => heard?.includes(id) ?? true);
    return { name: storeId === null ? 'Gear due' : `Gear due, ${shown[0]?.name ?? ''}`, stores: shown };
  }
}
