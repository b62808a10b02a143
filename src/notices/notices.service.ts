import { Injectable } from '@nestjs/common';
import { IsNull } from 'typeorm';
import { Clock } from '../clock.js';
import { CommitmentsService } from '../custody/commitments.service.js';
import { Ledger } from '../ledger/ledger.service.js';
import type { Actor } from '../people/actor.js';
import { Problem } from '../problem.js';
import { batchItemIds } from '../register/batch-items.js';
import { itemMarks } from '../register/item-marks.js';
import type { Day } from '../rules/calendar/day.js';
import type { Condition } from '../rules/gear/gear.js';
import { Reads } from '../storage/reads.js';
import { NoticeEntity } from './notice.entity.js';
import type { NoticedBatchView, NoticeView } from './notices.dto.js';
import { NOTICE_KINDS, settleBatchNotice, settleNotice, type NoticeKind } from './notices.js';

/** So many are shown; the rest come up as these are settled. */
const MOST_SHOWN = 50;

/** The notices that nobody has settled yet. */
@Injectable()
export class NoticesService {
  constructor(
    private readonly ledger: Ledger,
    private readonly reads: Reads,
    private readonly commitments: CommitmentsService,
    private readonly clock: Clock,
  ) {}

  /** The open notices, newest first, each with the jobs that the item or the batch is promised to as of now. */
  async open(): Promise<NoticeView[]> {
    const rows = await this.reads.manager
      .createQueryBuilder(NoticeEntity, 'notice')
      .leftJoin('notice.item', 'item')
      .innerJoin('notice.store', 'store')
      .addSelect(['item.id', 'item.tag', 'store.id', 'store.name', 'store.timeZone'])
      .where({ settledAt: IsNull() })
      .orderBy('notice.id', 'DESC')
      .limit(MOST_SHOWN)
      .getMany();
    return Promise.all(rows.map((row) => this.asView(row)));
  }

  /**
   * Says that a notice was dealt with. The gear stays as it is.
   * @throws Problem `not_found`, `not_allowed_now` of one that was settled before.
   */
  settle(actor: Actor, id: number): Promise<void> {
    return this.ledger.change(actor, async (change) => {
      await change.lock('notice', [id]);
      const notice = await change.manager.findOne(NoticeEntity, {
        where: { id },
        relations: { item: true },
      });
      if (!notice) throw new Problem('not_found', `There is no notice with the number ${id}.`);
      if (notice.settledAt !== null) throw new Problem('not_allowed_now', `Notice ${id} is settled already.`);
      if (notice.item) await settleNotice(change, id, notice.item);
      else await settleBatchNotice(change, id, batchOf(notice));
    });
  }

  private async asView(notice: NoticeEntity): Promise<NoticeView> {
    const { id, kind, item, store, jobId, detail, raisedAt } = notice;
    const today = this.clock.today(store?.timeZone ?? 'UTC');
    const itemIds = item ? [item.id] : await this.outOfBatch(notice);
    const about = item
      ? { itemId: item.id, tag: item.tag, batch: null }
      : { itemId: null, tag: null, batch: batchOf(notice) };
    return {
      id,
      kind: kindOf(kind),
      ...about,
      storeName: store?.name ?? '',
      what: detail['what'] ?? '',
      lastDayOfUse: detail['lastDayOfUse'] ?? null,
      by: detail['by'] ?? '',
      raisedAt,
      jobId,
      jobs: await this.jobs(itemIds, today),
    };
  }

  /** The jobs that any of the items is promised to, each once. */
  private async jobs(itemIds: readonly number[], today: Day): Promise<NoticeView['jobs']> {
    const open = await this.commitments.open(this.reads.manager, { itemIds }, today);
    const promises = itemIds.flatMap((itemId) => open.get(itemId) ?? []);
    const jobs = promises.map(({ jobId, jobReference: reference, from, to }) => {
      return { jobId, reference, from, to };
    });
    return [...new Map(jobs.map((job) => [job.jobId, job])).values()];
  }

  /** What of a batch is out of service in the store of its notice. */
  private async outOfBatch(notice: NoticeEntity): Promise<number[]> {
    const { manager } = this.reads;
    const marks = await itemMarks(manager, await batchItemIds(manager, batchOf(notice)));
    return [...marks.values()]
      .filter(({ storeId, condition }) => storeId === notice.storeId && OUT_OF_SERVICE.includes(condition))
      .map(({ id }) => id);
  }
}

const OUT_OF_SERVICE: readonly Condition[] = ['quarantined', 'underRepair'];

function batchOf({ detail }: NoticeEntity): NoticedBatchView {
  return {
    batch: detail['batch'] ?? '',
    maker: detail['maker'] ?? '',
    items: Number(detail['items'] ?? 0),
  };
}

/** A kind that no longer exists is read as the graver one. */
function kindOf(kind: string): NoticeKind {
  return NOTICE_KINDS.find((known) => known === kind) ?? 'immediateDanger';
}
