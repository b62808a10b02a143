import { Injectable } from '@nestjs/common';
import { Clock } from '../clock.js';
import { badInput } from '../http/input.js';
import { recordDefect } from '../inspections/record-defect.js';
import { todayAt } from '../inspections/inspections.service.js';
import { loadJob, type Job } from '../jobs/load-job.js';
import { Ledger, type Change } from '../ledger/ledger.service.js';
import type { Actor } from '../people/actor.js';
import { Problem } from '../problem.js';
import { changeItem, lockItem } from '../register/item-condition.js';
import type { Day } from '../rules/calendar/day.js';
import { BookedItemEntity } from './booked-item.entity.js';
import { asBookedItemView, bookedItems, type BookedItem } from './booked-items.js';
import type { BookedItemView, ReturnCondition, ReturnDto } from './booking.dto.js';
import { CommitmentsService } from './commitments.service.js';
import { lockTagged, type TaggedItem } from '../register/tagged-item.js';

/** Takes gear in again, says what did not come back, and what turned up after all. */
@Injectable()
export class Returns {
  constructor(
    private readonly ledger: Ledger,
    private readonly commitments: CommitmentsService,
    private readonly clock: Clock,
  ) {}

  /**
   * Takes one item in. Damage puts it in quarantine, and what is missing is marked so, in the same change.
   * @throws Problem `not_found`, `not_allowed_now` when it is not out on this job, `bad_input` of damage without words.
   */
  async bringBack(actor: Actor, jobId: number, input: ReturnDto): Promise<BookedItemView> {
    if (input.condition === 'damaged' && !input.remarks?.trim()) {
      throw badInput([{ field: 'remarks', message: 'say what is damaged, for the one who will examine it' }]);
    }
    return this.ledger.change(actor, async (change) => {
      await change.lock('job', [jobId]);
      const job = await loadJob(change.manager, jobId);
      const item = await lockTagged(change, input.tag);
      const rows = await bookedItems(change.manager, [jobId]);
      const row = rows.find(({ itemId, state }) => itemId === item.id && mayComeBack(state, input.condition));
      if (!row) throw await notOut(change, { job, item });
      const today = this.clock.today(job.store.timeZone);
      await settle(change, { job, row, input, today });
      await this.takeIn(change, item, { input, today });
      const settled = (await bookedItems(change.manager, [jobId])).find(({ id }) => id === row.id);
      return asBookedItemView(settled ?? row);
    });
  }

  /**
   * Says that a missing item turned up. It is back in its store.
   * @throws Problem `not_found`, `not_allowed_now` when it is not missing.
   */
  async found(actor: Actor, itemId: number): Promise<void> {
    await this.ledger.change(actor, async (change) => {
      const item = await lockItem(change, itemId);
      if (!item.missing) throw new Problem('not_allowed_now', `${item.tag} is not missing.`);
      const today = await todayAt(change, this.clock, item.storeId);
      for (const row of await change.manager.findBy(BookedItemEntity, { itemId, state: 'missing' })) {
        const set = {
          state: 'back' as const,
          toDay: lastDay(row, today),
          settledAt: change.at,
          version: row.version + 1,
        };
        await change.manager.update(BookedItemEntity, { id: row.id }, set);
      }
      await changeItem(change, item, { missing: false });
      change.note({
        action: 'item.found',
        subjectKind: 'item',
        subjectId: itemId,
        detail: { tag: item.tag, on: today },
      });
    });
  }

  /** What the return says of the item itself, and of the other jobs that count on it. */
  private async takeIn(
    change: Change,
    item: TaggedItem,
    { input, today }: { input: ReturnDto; today: Day },
  ): Promise<void> {
    const missing = input.condition === 'missing';
    if (item.missing !== missing) await changeItem(change, item, { missing });
    if (input.condition === 'damaged')
      await recordDefect(change, item, {
        severity: 'immediateDanger',
        description: input.remarks ?? '',
        today,
      });
    if (input.condition !== 'good')
      await this.commitments.flag(change, item, { because: ACTIONS[input.condition], today });
  }
}

const ACTIONS: Readonly<Record<ReturnCondition, string>> = {
  good: 'item.broughtBack',
  damaged: 'item.broughtBack',
  missing: 'item.notReturned',
};

async function settle(
  change: Change,
  { job, row, input, today }: { job: Job; row: BookedItem; input: ReturnDto; today: Day },
): Promise<void> {
  const { condition, remarks = '' } = input;
  const returnRemarks =
    [condition === 'damaged' ? 'Damaged:' : '', remarks].filter(Boolean).join(' ').slice(0, 500) || null;
  const state = condition === 'missing' ? ('missing' as const) : ('back' as const);
  const set = {
    state,
    toDay: lastDay(row, today),
    settledAt: change.at,
    returnRemarks,
    version: row.version + 1,
  };
  await change.manager.update(BookedItemEntity, { id: row.id }, set);
  const detail = { job: job.reference, condition, remarks, on: today };
  change.note({ action: ACTIONS[condition], subjectKind: 'item', subjectId: row.itemId, detail });
}

/** What is out may come back; what was said to be missing may come back too, but not be missing twice. */
function mayComeBack(state: BookedItem['state'], condition: ReturnDto['condition']): boolean {
  return state === 'out' || (state === 'missing' && condition !== 'missing');
}

/** The last day the item counts as away: today when it is back early, its back day otherwise. */
function lastDay({ fromDay, toDay }: Pick<BookedItemEntity, 'fromDay' | 'toDay'>, today: Day): string {
  const early = today < toDay ? today : toDay;
  return early < fromDay ? fromDay : early;
}

async function notOut(change: Change, { job, item }: { job: Job; item: TaggedItem }): Promise<Problem> {
  const elsewhere = await change.manager.findOne(BookedItemEntity, {
    where: { itemId: item.id, state: 'out' },
    relations: { job: true },
  });
  const where = elsewhere?.job ? ` It is out on job ${elsewhere.job.reference}: bring it back there.` : '';
  return new Problem('not_allowed_now', `${item.tag} is not out on job ${job.reference}.${where}`);
}
