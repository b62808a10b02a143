import { Injectable } from '@nestjs/common';
import { Clock } from '../clock.js';
import { CommitmentsService, type AffectedJob } from '../custody/commitments.service.js';
import { todayAt } from '../inspections/inspections.service.js';
import { Ledger, type Change } from '../ledger/ledger.service.js';
import { raiseBatchNotice } from '../notices/notices.js';
import type { Actor } from '../people/actor.js';
import { Problem } from '../problem.js';
import { batchItemIds, lockBatch, makersOfBatch } from '../register/batch-items.js';
import { takeOutOfService } from '../register/item-condition.js';
import { RegisterService } from '../register/register.service.js';
import { Reads } from '../storage/reads.js';
import type { BatchOutcomeView, BatchQuarantineDto, BatchView } from './batches.dto.js';

/** A maker's batch as a whole: what is wrong with one item of it may be wrong with all. */
@Injectable()
export class Batches {
  constructor(
    private readonly reads: Reads,
    private readonly ledger: Ledger,
    private readonly register: RegisterService,
    private readonly commitments: CommitmentsService,
    private readonly clock: Clock,
  ) {}

  /** The items of a batch; none yet while several makers have one of that name. @throws Problem `not_found`. */
  async look(batch: string, maker?: string): Promise<BatchView> {
    const { manager } = this.reads;
    const makers = await makersOfBatch(manager, batch);
    const asked = maker ?? (makers.length === 1 ? makers[0] : undefined);
    if (asked === undefined && makers.length > 1) return { batch, maker: null, makers, items: [] };
    const ids = asked === undefined ? [] : await batchItemIds(manager, { batch, maker: asked });
    if (ids.length === 0 || asked === undefined) throw noSuchBatch(batch, maker);
    return { batch, maker: asked, makers, items: await this.register.rows(ids) };
  }

  /**
   * Takes everything of a batch that is in service out of it, in one change, flags every job that counts on it, and
   * tells each store once. The actor is on record as its reporter, so somebody else has to examine and release it.
   * @throws Problem `not_found`, `not_allowed_now` when nothing of it is in service.
   */
  async quarantine(
    actor: Actor,
    batch: string,
    { maker, reason }: BatchQuarantineDto,
  ): Promise<BatchOutcomeView> {
    return this.ledger.change(actor, async (change) => {
      const items = await lockBatch(change, { batch, maker });
      if (items.length === 0) throw noSuchBatch(batch, maker);
      const inService = items.filter(({ condition }) => condition === 'inService');
      if (inService.length === 0)
        throw new Problem('not_allowed_now', `Nothing of batch ${batch} of ${maker} is in service.`);
      const tagsIn = (...conditions: string[]) =>
        items.filter(({ condition }) => conditions.includes(condition)).map(({ tag }) => tag);
      const outcome = {
        quarantined: tagsIn('inService'),
        alreadyOut: tagsIn('quarantined', 'underRepair'),
        scrapped: tagsIn('scrapped'),
      };
      const affected = new Map<number, AffectedJob>();
      for (const item of inService) {
        const today = await todayAt(change, this.clock, item.storeId);
        await takeOutOfService(change, item, { condition: 'quarantined', reason, today });
        const jobs = await this.commitments.flag(change, item, { because: 'item.quarantined', today });
        for (const job of jobs) affected.set(job.jobId, job);
      }
      await tellStores(change, inService, { batch, maker, what: reason });
      change.note({
        action: 'register.batchQuarantined',
        subjectKind: 'register',
        subjectId: 'batch',
        detail: { batch, maker, reason, ...outcome },
      });
      return { ...outcome, affectedJobs: [...affected.values()] };
    });
  }
}

/** One notice for each store, however many items of the batch it keeps. */
async function tellStores(
  change: Change,
  items: readonly { readonly storeId: number }[],
  about: { batch: string; maker: string; what: string },
): Promise<void> {
  const stores = new Set(items.map(({ storeId }) => storeId));
  for (const storeId of stores) {
    const inStore = items.filter((item) => item.storeId === storeId);
    await raiseBatchNotice(change, { ...about, storeId, items: inStore.length });
  }
}

function noSuchBatch(batch: string, maker: string | undefined): Problem {
  const whose = maker === undefined ? '' : ` of ${maker}`;
  return new Problem('not_found', `The register has nothing of batch ${batch}${whose}.`);
}
