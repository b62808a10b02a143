import { Injectable } from '@nestjs/common';
import { Clock } from '../clock.js';
import { CommitmentsService, type AffectedJob } from '../custody/commitments.service.js';
import { badInput } from '../http/input.js';
import { Ledger, type Change } from '../ledger/ledger.service.js';
import type { Actor } from '../people/actor.js';
import { Problem } from '../problem.js';
import {
  changeItem,
  lockItem,
  refuseScrapped,
  takeOutOfService,
  type LockedItem,
} from '../register/item-condition.js';
import { RegisterService } from '../register/register.service.js';
import { toDay, type Day } from '../rules/calendar/day.js';
import { isUniqueViolation } from '../storage/engine-errors.js';
import { findStore } from '../stores/find-store.js';
import { checkInspection, refuseOtherRoles } from './check-inspection.js';
import { InspectionEntity } from './inspection.entity.js';
import type { ItemOutcomeView, NewInspectionDto } from './inspections.dto.js';
import { release } from './release.js';

/** Records of checks and examinations, and what follows from them at once. */
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
      const row = await insertInspection(change, item, input);
      if (input.reportNumber !== undefined && input.type !== 'preUseCheck') {
        await changeItem(change, item, { certificateOnFile: true });
      }
      if (input.release) await release(change, item, row);
      return this.follow(change, item, { input, today });
    });
    return { item: await this.register.get(itemId), affectedJobs };
  }

  /** What a record leads to at once: quarantine, and jobs that need the item longer than it is good for. */
  private async follow(
    change: Change,
    item: LockedItem,
    { input, today }: { input: NewInspectionDto; today: Day },
  ): Promise<AffectedJob[]> {
    if (input.outcome === 'fit') {
      if (input.nextDueOn === undefined) return [];
      const fitThrough = toDay(input.nextDueOn);
      return this.commitments.flag(change, item, { because: 'inspection.recorded', today, fitThrough });
    }
    const reason =
      `Found unfit on ${input.doneOn}${input.remarks === undefined ? '' : `: ${input.remarks}`}`.slice(
        0,
        500,
      );
    if (item.condition === 'inService')
      await takeOutOfService(change, item, { condition: 'quarantined', reason, today });
    return this.commitments.flag(change, item, { because: 'inspection.recorded', today });
  }
}

/** Today at a store. */
export async function todayAt(change: Change, clock: Clock, storeId: number): Promise<Day> {
  const store = await findStore(change.manager, storeId);
  if (!store) throw new Error(`There is no store ${storeId}.`);
  return clock.today(store.timeZone);
}

async function insertInspection(
  change: Change,
  item: LockedItem,
  input: NewInspectionDto,
): Promise<InspectionEntity> {
  const {
    type,
    doneOn,
    outcome,
    nextDueOn = null,
    reportNumber = null,
    remarks = '',
    supersedesId = null,
  } = input;
  const doneBy = input.doneBy ?? change.actor.name;
  const record = { type, doneOn, outcome, nextDueOn, doneBy, reportNumber, remarks, supersedesId };
  const recorded = { itemId: item.id, recordedBy: change.actor.id, recordedAt: change.at };
  const row = change.manager.create(InspectionEntity, { ...record, ...recorded });
  await change.manager.insert(InspectionEntity, row).catch((error: unknown) => {
    if (!isUniqueViolation(error, { table: 'inspection', columns: ['supersedes_id'] })) throw error;
    throw new Problem(
      'not_allowed_now',
      `Record ${supersedesId} was corrected before: correct the correction.`,
    );
  });
  const detail = { tag: item.tag, inspectionId: row.id, ...record };
  change.note({ action: 'inspection.recorded', subjectKind: 'item', subjectId: item.id, detail });
  return row;
}

/** A correction stays with the item and the type: what a competent person found is not undone by another kind of record. */
async function refuseWrongCorrection(
  change: Change,
  item: LockedItem,
  { supersedesId, type }: NewInspectionDto,
): Promise<void> {
  if (supersedesId === undefined) return;
  const earlier = await change.manager.findOneBy(InspectionEntity, { id: supersedesId });
  const field = 'supersedesId';
  if (earlier?.itemId !== item.id) throw badInput([{ field, message: 'is not a record of this item' }]);
  if (earlier.type !== type)
    throw badInput([{ field, message: 'is a record of another type of inspection' }]);
}
