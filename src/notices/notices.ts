import { IsNull } from 'typeorm';
import type { Change } from '../ledger/ledger.service.js';
import { NoticeEntity } from './notice.entity.js';

/** What a notice is about: a danger now, a danger by a named day, or a check that found something to watch. */
export const NOTICE_KINDS = ['immediateDanger', 'dangerByDate', 'observation'] as const;
export type NoticeKind = (typeof NOTICE_KINDS)[number];

/** What of an item a notice names. */
type NoticedItem = { readonly id: number; readonly tag: string; readonly storeId: number };

/**
 * Tells storeman and manager of the item's store of a danger, inside the change that records it: the notice is
 * there with the record or not at all. `jobId` is the job on which it was found. Gives the number of the notice.
 */
export async function raiseNotice(
  change: Change,
  item: NoticedItem,
  { kind, what, jobId = null }: { kind: NoticeKind; what: string; jobId?: number | null },
): Promise<number> {
  const detail = { tag: item.tag, what, by: change.actor.name };
  const row = change.manager.create(NoticeEntity, {
    kind,
    storeId: item.storeId,
    itemId: item.id,
    jobId,
    detail,
    raisedAt: change.at,
    settledAt: null,
  });
  await change.manager.insert(NoticeEntity, row);
  change.note({
    action: 'notice.raised',
    subjectKind: 'item',
    subjectId: item.id,
    detail: { noticeId: row.id, kind, jobId, ...detail },
  });
  return row.id;
}

/** Settles every open notice of a locked item that was released or scrapped. */
export async function settleNoticesOf(change: Change, item: Omit<NoticedItem, 'storeId'>): Promise<void> {
  const open = await change.manager.findBy(NoticeEntity, { itemId: item.id, settledAt: IsNull() });
  for (const { id } of open) await settleNotice(change, id, item);
}

/** Settles one open notice. `item` is what it is about. */
export async function settleNotice(
  change: Change,
  id: number,
  item: Omit<NoticedItem, 'storeId'>,
): Promise<void> {
  await change.manager.update(NoticeEntity, { id }, { settledAt: change.at });
  const detail = { tag: item.tag, noticeId: id };
  change.note({ action: 'notice.settled', subjectKind: 'item', subjectId: item.id, detail });
}
