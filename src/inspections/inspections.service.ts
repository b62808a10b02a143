import { Injectable } from '@nestjs/common';
import { Catalogue } from '../catalogue/catalogue.js';
import { Clock } from '../clock.js';
import { CommitmentsService } from '../custody/commitments.service.js';
import { badInput } from '../http/input.js';
import { Ledger, type Change } from '../ledger/ledger.service.js';
import type { Actor } from '../people/actor.js';
import { lockItem, refuseScrapped } from '../register/item-condition.js';
import { RegisterService } from '../register/register.service.js';
import type { Day } from '../rules/calendar/day.js';
import { findStore } from '../stores/find-store.js';
import type { StoreView } from '../stores/stores.dto.js';
import { checkInspection, refuseOtherRoles } from './check-inspection.js';
import { refuseCorrectionOfReport, refuseEarlierRelease, refuseWrongCorrection } from './correction.js';
import { followInspection } from './follow-inspection.js';
import type { ItemOutcomeView, NewInspectionDto } from './inspections.dto.js';
import { release } from './release.js';
import { insertWithReport, lacksReport } from './report-on-file.js';

/** Records of inspections and examinations, and what follows from them at once. */
@Injectable()
export class InspectionsService {
  constructor(
    private readonly ledger: Ledger,
    private readonly register: RegisterService,
    private readonly commitments: CommitmentsService,
    private readonly clock: Clock,
    private readonly catalogue: Catalogue,
  ) {}

  /**
   * Records an inspection. 'unfit' quarantines the item; a thorough examination passed with `release` ends quarantine.
   * One passed without a report number takes the report of the item off file, unless a later one was passed.
   * @throws Problem `not_found`, `bad_input`, `not_your_role`, `not_allowed_now`.
   */
  async record(actor: Actor, itemId: number, input: NewInspectionDto): Promise<ItemOutcomeView> {
    const affectedJobs = await this.ledger.change(actor, async (change) => {
      refuseOtherRoles(actor, input.type);
      const item = await lockItem(change, itemId);
      refuseScrapped(item);
      const store = await storeOf(change, item.storeId);
      const today = this.clock.today(store.timeZone);
      const errors = checkInspection(input, { item, actor, today });
      if (errors.length > 0) throw badInput(errors);
      await refuseWrongCorrection(change, item, input);
      await refuseEarlierRelease(change, item, input);
      await refuseCorrectionOfReport(change, input);
      const hadReport = item.certificateOnFile;
      const row = await insertWithReport(change, item, input);
      if (input.release) await release(change, item, { examination: row, clock: this.clock });
      const lostReport = hadReport && lacksReport(item, this.catalogue.scheme(store.scheme), today);
      return followInspection(change, item, { input, today, lostReport, commitments: this.commitments });
    });
    return { item: await this.register.get(itemId), affectedJobs };
  }
}

/** Today at a store. */
export async function todayAt(change: Change, clock: Clock, storeId: number): Promise<Day> {
  return clock.today((await storeOf(change, storeId)).timeZone);
}

async function storeOf(change: Change, storeId: number): Promise<StoreView> {
  const store = await findStore(change.manager, storeId);
  if (!store) throw new Error(`There is no store ${storeId}.`);
  return store;
}
