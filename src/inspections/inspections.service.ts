import { Injectable } from '@nestjs/common';
import { Clock } from '../clock.js';
import { CommitmentsService } from '../custody/commitments.service.js';
import { badInput } from '../http/input.js';
import { Ledger, type Change } from '../ledger/ledger.service.js';
import type { Actor } from '../people/actor.js';
import { changeItem, lockItem, refuseScrapped } from '../register/item-condition.js';
import { RegisterService } from '../register/register.service.js';
import type { Day } from '../rules/calendar/day.js';
import { findStore } from '../stores/find-store.js';
import { checkInspection, refuseOtherRoles } from './check-inspection.js';
import { refuseCorrectionOfReport, refuseWrongCorrection } from './correction.js';
import { followInspection } from './follow-inspection.js';
import { insertInspection } from './insert-inspection.js';
import type { ItemOutcomeView, NewInspectionDto } from './inspections.dto.js';
import { release } from './release.js';

/** Records of inspections and examinations, and what follows from them at once. */
@Injectable()
export class InspectionsService {
  constructor(
    private readonly ledger: Ledger,
    private readonly register: RegisterService,
    private readonly commitments: CommitmentsService,
    private readonly clock: Clock,
  ) {}

  /**
   * Records an inspection. 'unfit' quarantines the item; a thorough examination passed with `release` ends quarantine.
   * @throws Problem `not_found`, `bad_input`, `not_your_role`, `not_allowed_now`.
   */
  async record(actor: Actor, itemId: number, input: NewInspectionDto): Promise<ItemOutcomeView> {
    const affectedJobs = await this.ledger.change(actor, async (change) => {
      refuseOtherRoles(actor, input.type);
      const item = await lockItem(change, itemId);
      refuseScrapped(item);
      const today = await todayAt(change, this.clock, item.storeId);
      const errors = checkInspection(input, { item, actor, today });
      if (errors.length > 0) throw badInput(errors);
      await refuseWrongCorrection(change, item, input);
      await refuseCorrectionOfReport(change, input);
      const row = await insertInspection(change, item, input);
      if (input.reportNumber !== undefined) {
        await changeItem(change, item, { certificateOnFile: true });
      }
      if (input.release) await release(change, item, row);
      return followInspection(change, item, { input, today, commitments: this.commitments });
    });
    return { item: await this.register.get(itemId), affectedJobs };
  }
}

/** Today at a store. */
export async function todayAt(change: Change, clock: Clock, storeId: number): Promise<Day> {
  const store = await findStore(change.manager, storeId);
  if (!store) throw new Error(`There is no store ${storeId}.`);
  return clock.today(store.timeZone);
}
