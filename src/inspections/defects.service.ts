import { Injectable } from '@nestjs/common';
import { Clock } from '../clock.js';
import { CommitmentsService, type AffectedJob } from '../custody/commitments.service.js';
import { badInput } from '../http/input.js';
import { Ledger, type Change } from '../ledger/ledger.service.js';
import { raiseNotice, settleNoticesOf } from '../notices/notices.js';
import type { Actor } from '../people/actor.js';
import { Problem } from '../problem.js';
import { lockItem, refuseScrapped, takeOutOfService, type LockedItem } from '../register/item-condition.js';
import { RegisterService } from '../register/register.service.js';
import { toDay, type Day } from '../rules/calendar/day.js';
import type { ItemOutcomeView, NewDefectDto, NewEventDto, ScrapDto } from './inspections.dto.js';
import { todayAt } from './inspections.service.js';
import { recordDefect } from './record-defect.js';
import { recordEvent } from './record-event.js';

/** What goes wrong with items: defects, events, quarantine, repair, scrapping. Each answers with the jobs it concerns. */
@Injectable()
export class DefectsService {
  constructor(
    private readonly ledger: Ledger,
    private readonly register: RegisterService,
    private readonly commitments: CommitmentsService,
    private readonly clock: Clock,
  ) {}

  /**
   * Reports a defect. An immediate danger quarantines the item in the same change; a danger of either sort tells the
   * store.
   * @throws Problem `not_found`, `bad_input`, `not_allowed_now`.
   */
  reportDefect(actor: Actor, itemId: number, input: NewDefectDto): Promise<ItemOutcomeView> {
    return this.changeItem(actor, itemId, async (change, item, today) => {
      refuseWrongDeadline(input, today);
      await recordDefect(change, item, { ...input, today });
      if (input.severity === 'observation') return [];
      await raiseNotice(change, item, {
        kind: input.severity,
        what: input.description,
        lastDayOfUse: input.lastDayOfUse ?? null,
      });
      const fitThrough = input.lastDayOfUse ? { fitThrough: toDay(input.lastDayOfUse) } : {};
      return this.commitments.flag(change, item, { because: 'defect.reported', today, ...fitThrough });
    });
  }

  /** Takes an item out of service. @throws Problem `not_found`, `not_allowed_now`. */
  quarantine(actor: Actor, itemId: number, reason: string): Promise<ItemOutcomeView> {
    return this.changeItem(actor, itemId, async (change, item, today) => {
      if (item.condition !== 'inService') {
        throw new Problem(
          'not_allowed_now',
          `${item.tag} is out of service already. Report what you found as a defect.`,
        );
      }
      await takeOutOfService(change, item, { condition: 'quarantined', reason, today });
      return this.commitments.flag(change, item, { because: 'item.quarantined', today });
    });
  }

  /** Sends an item to repair. It comes back into service by an examination only. @throws Problem `not_found`, `not_allowed_now`. */
  startRepair(actor: Actor, itemId: number, reason: string): Promise<ItemOutcomeView> {
    return this.changeItem(actor, itemId, async (change, item, today) => {
      if (item.condition === 'underRepair')
        throw new Problem('not_allowed_now', `${item.tag} is under repair already.`);
      await takeOutOfService(change, item, { condition: 'underRepair', reason, today });
      return this.commitments.flag(change, item, { because: 'item.repairStarted', today });
    });
  }

  /** Scraps an item for good. @throws Problem `not_found`, `not_allowed_now`. */
  scrap(actor: Actor, itemId: number, { reason, howMadeUnusable }: ScrapDto): Promise<ItemOutcomeView> {
    return this.changeItem(actor, itemId, async (change, item, today) => {
      const both = `${reason} (${howMadeUnusable})`;
      await takeOutOfService(change, item, { condition: 'scrapped', reason: both, today });
      await settleNoticesOf(change, item);
      return this.commitments.flag(change, item, { because: 'item.scrapped', today });
    });
  }

  /** Records something that happened and calls for a fresh examination. @throws Problem `not_found`, `bad_input`, `not_allowed_now`. */
  recordEvent(actor: Actor, itemId: number, input: NewEventDto): Promise<ItemOutcomeView> {
    return this.changeItem(actor, itemId, async (change, item, today) => {
      if (input.happenedOn > today) {
        throw badInput([
          { field: 'happenedOn', message: `is in the future: today is ${today} at the store` },
        ]);
      }
      await recordEvent(change, item, input);
      return this.commitments.flag(change, item, { because: 'event.recorded', today });
    });
  }

  /** The frame that all of them share: a locked item that is not scrapped, today at its store, and the answer. */
  private async changeItem(
    actor: Actor,
    itemId: number,
    work: (change: Change, item: LockedItem, today: Day) => Promise<AffectedJob[]>,
  ): Promise<ItemOutcomeView> {
    const affectedJobs = await this.ledger.change(actor, async (change) => {
      const item = await lockItem(change, itemId);
      refuseScrapped(item);
      return work(change, item, await todayAt(change, this.clock, item.storeId));
    });
    return { item: await this.register.get(itemId), affectedJobs };
  }
}

function refuseWrongDeadline({ severity, lastDayOfUse }: NewDefectDto, today: Day): void {
  const field = 'lastDayOfUse';
  if (severity === 'dangerByDate') {
    if (lastDayOfUse === undefined)
      throw badInput([{ field, message: 'write the last day on which it may be used' }]);
    if (lastDayOfUse < today)
      throw badInput([{ field, message: 'is past: then the danger is here already' }]);
  } else if (lastDayOfUse !== undefined) {
    throw badInput([{ field, message: 'goes with a danger by a date only' }]);
  }
}
