import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
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
  ) {}

  /** The items of the filter as they stand on `today`, scrapped ones too, in the order of their numbers. */
  async load(manager: EntityManager, filter: GearFilter, today: Day): Promise<Gear[]> {
    const items = await this.items.load(manager, filter);
    const inspections = await this.inspections.load(manager, filter);
    const commitments = await this.commitments.load(manager, filter, today);
    const lifts = await this.lifts.load(manager, filter);
    return items.map((item) => ({
      ...item,
      ...(inspections.get(item.itemId) ?? { inspections: [], events: [] }),
      commitments: commitments.get(item.itemId) ?? [],
      ...liftsOf(lifts.get(item.itemId)),
    }));
  }
}

function liftsOf(lifts: readonly DayLifts[] | undefined): Pick<Gear, 'lifts'> {
  return lifts === undefined ? {} : { lifts };
}
