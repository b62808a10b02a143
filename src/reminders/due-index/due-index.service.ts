import { Injectable } from '@nestjs/common';
import { In, type EntityManager } from 'typeorm';
import { Clock } from '../../clock.js';
import { toDay, type Day } from '../../rules/calendar/day.js';
import { placeholders } from '../../storage/placeholders.js';
import { UnitOfWork } from '../../storage/unit-of-work.js';
import { findStores } from '../../stores/find-store.js';
import { itemBriefs } from '../../register/item-briefs.js';
import { DueFacts } from './due-facts.service.js';
import { DueStaleEntity } from './due-stale.entity.js';
import { writeIndex, type IndexRow } from './index-rows.js';
import { SchemeWatch } from './scheme-watch.service.js';

/** So many stale marks are worked off in one transaction: short enough that nobody at a counter waits for it. */
const MARKS_AT_A_TIME = 500;

/** Pages look at no more stale items than this: half a second's work. */
export const MOST_STALE_SHOWN = 2_000;

/** How many items fall due on a day. */
export interface DayCount {
  readonly dueOn: Day;
  readonly count: number;
}

/** Finds what falls due by a day without looking at the rest of the register. */
@Injectable()
export class DueIndex {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly dueFacts: DueFacts,
    private readonly schemes: SchemeWatch,
    private readonly clock: Clock,
  ) {}

  /**
   * Works out again the due day of every item that was marked stale, and of all items of a scheme that asks something
   * else than before. Gives how many marks were worked off. Doing it twice, or on two servers at once, changes nothing.
   *
   * No mark is lost to a write that commits meanwhile: each write appends a mark of its own, in its own transaction.
   * A chunk reads marks first and facts after them, and deletes just the marks it read. So a mark that is deleted
   * was committed before the facts were read, and with it the write that made it; the mark of a later write stays.
   * Items are locked from then on, so of two servers that have marks of one item, the later reads what the earlier saw
   * or newer.
   */
  async refresh(): Promise<number> {
    await this.schemes.markChanged();
    let done = 0;
    for (let marks = Infinity; marks > 0; done += marks)
      marks = await this.unitOfWork.run((manager) => this.refreshSome(manager));
    return done;
  }

  /**
   * The items of the store that may fall due up to and with a day, those among them whose due day is stale. The facts
   * decide. With `newestStaleOnly`, of the stale marks only the newest are looked at: a page shows what was just
   * written, and is not slowed down while a whole register is worked out again.
   */
  async candidates(
    manager: EntityManager,
    {
      storeId,
      through,
      newestStaleOnly = false,
    }: { storeId: number; through: Day; newestStaleOnly?: boolean },
  ): Promise<number[]> {
    const newest = `(SELECT item_id FROM due_stale ORDER BY id DESC LIMIT ${MOST_STALE_SHOWN}) AS due_stale`;
    const rows = await manager.query<{ item_id: number }[]>(
      `SELECT item_id FROM due_day WHERE store_id = $1 AND due_on <= $2
       UNION SELECT due_stale.item_id FROM ${newestStaleOnly ? newest : 'due_stale'}
         JOIN item ON item.id = due_stale.item_id WHERE item.store_id = $1`,
      [storeId, through],
    );
    return rows.map(({ item_id }) => item_id);
  }

  /** How many due days wait to be worked out again, where they are more than `newestStaleOnly` looks at; else 0. */
  async catchingUp(manager: EntityManager): Promise<number> {
    const marks = await manager.count(DueStaleEntity);
    return marks > MOST_STALE_SHOWN ? marks : 0;
  }

  /** A text that is another after every write to the index; undefined while due days wait to be worked out again. */
  async state(manager: EntityManager): Promise<string | undefined> {
    if (await manager.existsBy(DueStaleEntity, {})) return undefined;
    const [row] = await manager.query<{ days: number | string; changes: number | string | null }[]>(
      'SELECT COUNT(*) AS days, SUM(sequence) AS changes FROM calendar_day',
    );
    return `${row?.days ?? 0} ${row?.changes ?? 0}`;
  }

  /** How many items of the stores fall due on each day after `after` up to and with `through`, by day. */
  async counts(
    manager: EntityManager,
    { storeIds, after, through }: { storeIds: readonly number[]; after: Day; through: Day },
  ): Promise<DayCount[]> {
    if (storeIds.length === 0) return [];
    const next = storeIds.length + 1;
    const rows = await manager.query<{ due_on: string; items: number | string }[]>(
      `SELECT CAST(due_on AS varchar(10)) AS due_on, COUNT(*) AS items FROM due_day
       WHERE store_id IN (${placeholders(storeIds.length)}) AND due_on > $${next} AND due_on <= $${next + 1}
       GROUP BY due_on ORDER BY due_on`,
      [...storeIds, after, through],
    );
    return rows.map(({ due_on, items }) => ({ dueOn: toDay(due_on), count: Number(items) }));
  }

  private async refreshSome(manager: EntityManager): Promise<number> {
    const marks = await manager.query<{ id: number; item_id: number }[]>(
      `SELECT id, item_id FROM due_stale ORDER BY id LIMIT ${MARKS_AT_A_TIME}${this.unitOfWork.skippingTaken}`,
    );
    if (marks.length === 0) return 0;
    const itemIds = [...new Set(marks.map(({ item_id }) => item_id))].sort((a, b) => a - b);
    await this.unitOfWork.lock(manager, 'item', itemIds);
    const rows = await this.rowsOf(manager, itemIds);
    await writeIndex(manager, { itemIds, rows, at: this.clock.now() });
    await manager.delete(DueStaleEntity, { id: In(marks.map(({ id }) => id)) });
    return marks.length;
  }

  private async rowsOf(manager: EntityManager, itemIds: readonly number[]): Promise<IndexRow[]> {
    const items = await itemBriefs(manager, itemIds);
    const rows: IndexRow[] = [];
    for (const store of await findStores(manager)) {
      const inStore = items.filter(({ storeId }) => storeId === store.id).map(({ id }) => id);
      if (inStore.length === 0) continue;
      for (const { gear, dueOn } of await this.dueFacts.load(manager, store, inStore))
        rows.push({ itemId: gear.itemId, storeId: store.id, dueOn });
    }
    return rows;
  }
}
