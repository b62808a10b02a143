import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { Catalogue } from '../../catalogue/catalogue.js';
import { Clock } from '../../clock.js';
import { GearFacts } from '../../planner/gear-facts.service.js';
import { enteredAt } from '../../register/entered-at.js';
import type { Day } from '../../rules/calendar/day.js';
import type { SchemeDefinition } from '../../rules/due/scheme.js';
import type { Gear } from '../../rules/gear/gear.js';
import { dueDayOf, type DueDay } from './due-day-of.js';

/** An item that falls due, as it stands on its store's today. */
export interface DueItem extends DueDay {
  readonly gear: Gear;
  readonly today: Day;
  readonly scheme: SchemeDefinition;
}

/** What of a store says when its gear falls due. */
export interface DueStore {
  readonly id: number;
  readonly scheme: string;
  readonly timeZone: string;
}

/** Works due days out from the facts: the truth that the index only points to. */
@Injectable()
export class DueFacts {
  constructor(
    private readonly facts: GearFacts,
    private readonly catalogue: Catalogue,
    private readonly clock: Clock,
  ) {}

  /** Those of the items that stand at the store and fall due some day. */
  async load(manager: EntityManager, store: DueStore, itemIds: readonly number[]): Promise<DueItem[]> {
    const today = this.clock.today(store.timeZone);
    const scheme = this.catalogue.scheme(store.scheme);
    const entered = await enteredAt(manager, itemIds);
    const gear = await this.facts.load(manager, { itemIds }, today);
    return gear.flatMap((item) => {
      const createdAt = entered.get(item.itemId);
      if (item.storeId !== store.id || createdAt === undefined) return [];
      const enteredOn = (): Day => this.clock.dayAt(createdAt, store.timeZone);
      const due = dueDayOf(item, { scheme, today, enteredOn });
      return due === undefined ? [] : [{ ...due, gear: item, today, scheme }];
    });
  }
}
