import { Injectable } from '@nestjs/common';
import { IsNull } from 'typeorm';
import { Clock } from '../clock.js';
import { CommitmentsService } from '../custody/commitments.service.js';
import { Ledger } from '../ledger/ledger.service.js';
import type { Actor } from '../people/actor.js';
import { Problem } from '../problem.js';
import { Reads } from '../storage/reads.js';
import { NoticeEntity } from './notice.entity.js';
import type { NoticeView } from './notices.dto.js';
import { NOTICE_KINDS, settleNotice, type NoticeKind } from './notices.js';

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

  /** The open notices, newest first, each with the jobs that the item is promised to as of now. */
  async open(): Promise<NoticeView[]> {
    const rows = await this.reads.manager
      .createQueryBuilder(NoticeEntity, 'notice')
      .innerJoin('notice.item', 'item')
      .innerJoin('notice.store', 'store')
      .addSelect(['item.id', 'item.tag', 'store.id', 'store.name', 'store.timeZone'])
      .where({ settledAt: IsNull() })
      .orderBy('notice.id', 'DESC')
      .limit(MOST_SHOWN)
      .getMany();
    return Promise.all(rows.map((row) => this.asView(row)));
  }

  /**
   * Says that a notice was dealt with. The item stays as it is.
   * @throws Problem `not_found`, `not_allowed_now` of one that was settled before.
   */
  settle(actor: Actor, id: number): Promise<void> {
    return this.ledger.change(actor, async (change) => {
      await change.lock('notice', [id]);
      const notice = await change.manager.findOne(NoticeEntity, {
        where: { id },
        relations: { item: true },
      });
      if (!notice?.item) throw new Problem('not_found', `There is no notice with the number ${id}.`);
      if (notice.settledAt !== null)
        throw new Problem('not_allowed_now', `The notice of ${notice.item.tag} is settled already.`);
      await settleNotice(change, id, notice.item);
    });
  }

  private async asView({
    id,
    kind,
    item,
    store,
    jobId,
    detail,
    raisedAt,
  }: NoticeEntity): Promise<NoticeView> {
    const itemId = item?.id ?? 0;
    const today = this.clock.today(store?.timeZone ?? 'UTC');
    const open = await this.commitments.open(this.reads.manager, { itemIds: [itemId] }, today);
    return {
      id,
      kind: kindOf(kind),
      itemId,
      tag: item?.tag ?? '',
      storeName: store?.name ?? '',
      what: detail['what'] ?? '',
      by: detail['by'] ?? '',
      raisedAt,
      jobId,
      jobs: (open.get(itemId) ?? []).map((promise) => ({
        jobId: promise.jobId,
        reference: promise.jobReference,
        from: promise.from,
        to: promise.to,
      })),
    };
  }
}

/** A kind that no longer exists is read as the graver one. */
function kindOf(kind: string): NoticeKind {
  return NOTICE_KINDS.find((known) => known === kind) ?? 'immediateDanger';
}
