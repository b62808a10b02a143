import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { AwayFacts } from '../custody/away-facts.service.js';
import { CommitmentsService } from '../custody/commitments.service.js';
import { LiftFacts } from '../custody/lift-facts.service.js';
import { InspectionFacts } from '../inspections/inspection-facts.service.js';
import type { GearFilter } from '../register/gear-filter.js';
import { ItemFacts } from '../register/item-facts.service.js';
import type { Day } from '../rules/calendar/day.js';
import type { DayLifts, Gear } from '../rules/gear/gear.js';

/** Brings together everything the rules decide on. Every gate asks here, through its own manager, and keeps nothing. */
@Injectable()
export class GearFacts {
  constructor(
    private readonly items: ItemFacts,
    private readonly inspections: InspectionFacts,
    private readonly commitments: CommitmentsService,
    private readonly lifts: LiftFacts,
    private readonly away: AwayFacts,
  ) {}

  /** The items of the filter as they stand on `today`, scrapped ones too, in the order of their numbers. */
  async load(manager: EntityManager, filter: GearFilter, today: Day): Promise<Gear[]> {
    const items = await this.items.load(manager, filter);
    const inspections = await this.inspections.load(manager, filter);
    const commitments = await this.commitments.load(manager, filter, today);
    const lifts = await this.lifts.load(manager, filter);
    const away = await this.away.load(manager, filter, today);
    return items.map((item) => ({
      ...item,
      ...(inspections.get(item.itemId) ?? { inspections: [], events: [] }),
      commitments: commitments.get(item.itemId) ?? [],
      ...useOf(lifts.get(item.itemId), away.get(item.itemId)),
    }));
  }
}

function useOf(
  lifts: readonly DayLifts[] | undefined,
  lastAwayOn: Day | undefined,
): Pick<Gear, 'lifts' | 'lastAwayOn'> {
  return { ...(lifts === undefined ? {} : { lifts }), ...(lastAwayOn === undefined ? {} : { lastAwayOn }) };
}
