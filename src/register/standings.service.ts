import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { Catalogue } from '../catalogue/catalogue.js';
import { Clock } from '../clock.js';
import { CommitmentsService, type OpenCommitment } from '../custody/commitments.service.js';
import { GearFacts } from '../planner/gear-facts.service.js';
import type { Day } from '../rules/calendar/day.js';
import { currency, dueDates, type Currency, type DueReport } from '../rules/due/due-date.js';
import type { Gear } from '../rules/gear/gear.js';
import { StoresService } from '../stores/stores.service.js';

/** An inspection no more than so many days away is 'due soon': time to book an examiner. Common practice, no source. */
export const DUE_SOON_DAYS = 30;

/** Where an item stands today, by the clock and the scheme of its own store. */
export interface Standing {
  readonly gear: Gear;
  readonly today: Day;
  readonly report: DueReport;
  readonly currency: Currency;
  readonly promises: readonly OpenCommitment[];
}

/** Tells where items stand, for the lists and pages of the register. Nothing of it is kept. */
@Injectable()
export class Standings {
  constructor(
    private readonly gearFacts: GearFacts,
    private readonly commitments: CommitmentsService,
    private readonly stores: StoresService,
    private readonly catalogue: Catalogue,
    private readonly clock: Clock,
  ) {}

  /** The standings by item number. */
  async load(
    manager: EntityManager,
    items: readonly { readonly id: number; readonly storeId: number }[],
  ): Promise<ReadonlyMap<number, Standing>> {
    const standings = new Map<number, Standing>();
    for (const store of await this.stores.list()) {
      const itemIds = items.filter(({ storeId }) => storeId === store.id).map(({ id }) => id);
      if (itemIds.length === 0) continue;
      const today = this.clock.today(store.timeZone);
      const scheme = this.catalogue.scheme(store.scheme);
      const promises = await this.commitments.open(manager, { itemIds }, today);
      for (const gear of await this.gearFacts.load(manager, { itemIds }, today)) {
        const report = dueDates(gear, scheme, today);
        const inOneWord = currency(report, today, DUE_SOON_DAYS);
        const promised = promises.get(gear.itemId) ?? [];
        standings.set(gear.itemId, { gear, today, report, currency: inOneWord, promises: promised });
      }
    }
    return standings;
  }
}
