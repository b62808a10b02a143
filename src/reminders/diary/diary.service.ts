import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { Clock } from '../../clock.js';
import { CommitmentsService, type OpenCommitment } from '../../custody/commitments.service.js';
import { addDays, type Day } from '../../rules/calendar/day.js';
import { currency } from '../../rules/due/due-date.js';
import { MOST_DAYS_EARLY } from '../../rules/reminders/visit-need.js';
import { Reads } from '../../storage/reads.js';
import type { StoreView } from '../../stores/stores.dto.js';
import { StoresService } from '../../stores/stores.service.js';
import { DueFacts, type DueItem } from '../due-index/due-facts.service.js';
import { DueIndex } from '../due-index/due-index.service.js';
import type { DiaryEntry, DiaryJob } from './diary-entry.js';
import { inDiaryOrder } from './diary-order.js';
import { dueReasons } from './due-reasons.js';

/** Items are looked at so many at a time, so that a store full of gear due at once fits in memory. */
const ITEMS_AT_A_TIME = 500;

interface Ahead {
  readonly daysAhead: number;
  readonly newestStaleOnly?: boolean;
}

/** What falls due, when, and which job it would stop: found by the index, told by the facts. */
@Injectable()
export class DueDiary {
  constructor(
    private readonly reads: Reads,
    private readonly stores: StoresService,
    private readonly index: DueIndex,
    private readonly dueFacts: DueFacts,
    private readonly commitments: CommitmentsService,
    private readonly clock: Clock,
  ) {}

  /**
   * Everything of the stores (all when left out) that falls due within so many days of each store's today: overdue and
   * out on a job first, then overdue, then by due day and tag. `newestStaleOnly` is for pages, as in the index.
   */
  async entries({ storeIds, ...ahead }: Ahead & { storeIds?: readonly number[] }): Promise<DiaryEntry[]> {
    const entries: DiaryEntry[] = [];
    for (const store of await this.stores.list())
      if (storeIds?.includes(store.id) ?? true) entries.push(...(await this.ofStore(store, ahead)));
    return inDiaryOrder(entries);
  }

  private async ofStore(
    store: StoreView,
    { daysAhead, newestStaleOnly = false }: Ahead,
  ): Promise<DiaryEntry[]> {
    const { manager } = this.reads;
    const through = addDays(this.clock.today(store.timeZone), daysAhead);
    const itemIds = await this.index.candidates(manager, { storeId: store.id, through, newestStaleOnly });
    const entries: DiaryEntry[] = [];
    for (let start = 0; start < itemIds.length; start += ITEMS_AT_A_TIME) {
      const some = itemIds.slice(start, start + ITEMS_AT_A_TIME);
      entries.push(...(await this.ofItems(manager, { store, itemIds: some, through })));
    }
    return entries;
  }

  private async ofItems(
    manager: EntityManager,
    { store, itemIds, through }: { store: StoreView; itemIds: readonly number[]; through: Day },
  ): Promise<DiaryEntry[]> {
    const items = (await this.dueFacts.load(manager, store, itemIds)).filter(({ dueOn }) => dueOn <= through);
    const promises = await this.commitments.open(
      manager,
      { itemIds: items.map(({ gear }) => gear.itemId) },
      this.clock.today(store.timeZone),
    );
    return items.flatMap((item) => {
      const open = promises.get(item.gear.itemId) ?? [];
      return isOwners(item, open) ? [] : [asEntry(item, open)];
    });
  }
}

/**
 * True of hired gear that is its owner's to have examined: its hire is over, or ends before it falls due. No duty takes
 * it after its hire. What is still out is told of all the same.
 */
function isOwners({ gear: { hire }, dueOn, today }: DueItem, promises: readonly OpenCommitment[]): boolean {
  if (hire?.to === undefined || promises.some(({ out }) => out)) return false;
  return hire.to < today || hire.to < dueOn;
}

function asEntry(item: DueItem, promises: readonly OpenCommitment[]): DiaryEntry {
  const { gear, dueOn, report, today } = item;
  const { itemId, tag, kind, storeId, storeName } = gear;
  const overdue = ['outOfDate', 'neverExamined'].includes(currency(report, today, 0));
  const jobs = promises.map(asJob);
  const stops = jobs.filter(({ to }) => overdue || to > dueOn);
  // What can be done in one go with what is due first. What comes later is no reason, and asks nobody else to come.
  const inOneGo = addDays(dueOn > today ? dueOn : today, MOST_DAYS_EARLY);
  return {
    ...{ itemId, tag, kind, storeId, storeName, today, dueOn, overdue, jobs, stops },
    ...dueReasons(item, inOneGo),
  };
}

function asJob({ jobId, jobReference, from, to, out }: OpenCommitment): DiaryJob {
  return { jobId, reference: jobReference, from, to, out };
}
