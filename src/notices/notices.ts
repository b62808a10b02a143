import { IsNull } from 'typeorm';
import type { Change } from '../ledger/ledger.service.js';
import { NoticeEntity } from './notice.entity.js';

/** What was found on one item: a danger now, a danger by a named day, or something to watch. */
export const ITEM_NOTICE_KINDS = ['immediateDanger', 'dangerByDate', 'observation'] as const;

/** What a notice is about: what was found on one item, or a maker's batch that was taken out of service as a whole. */
export const NOTICE_KINDS = [...ITEM_NOTICE_KINDS, 'batchQuarantined'] as const;
export type NoticeKind = (typeof NOTICE_KINDS)[number];

/** The batch that a notice names. */
interface NoticedBatch {
  readonly batch: string;
  readonly maker: string;
}

/** What a line of the ledger about a batch is about. */
const BATCH_SUBJECT = { subjectKind: 'register', subjectId: 'batch' } as const;

/** What of an item a notice names. */
type NoticedItem = { readonly id: number; readonly tag: string; readonly storeId: number };

/**
 * Tells storeman and manager of the item's store of a danger, inside the change that records it: the notice is
 * there with the record or not at all. `jobId` is the job on which it was found; after `lastDayOfUse` it is a danger.
 * Gives the number of the notice.
 */
export async function raiseNotice(
  change: Change,
  item: NoticedItem,
  {
    kind,
    what,
    jobId = null,
    lastDayOfUse = null,
  }: {
    kind: (typeof ITEM_NOTICE_KINDS)[number];
    what: string;
    jobId?: number | null;
    lastDayOfUse?: string | null;
  },
): Promise<number> {
  const until = lastDayOfUse === null ? {} : { lastDayOfUse };
  const detail = { tag: item.tag, what, ...until, by: change.actor.name };
  const row = change.manager.create(NoticeEntity, {
    kind,
    storeId: item.storeId,
    itemId: item.id,
    jobId,
    detail,
    raisedAt: change.at,
    settledAt: null,
    mailedAt: null,
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

/**
 * Tells storeman and manager of a store that items of a maker's batch were taken out of service, in one notice however
 * many they are. Gives the number of the notice.
 */
export async function raiseBatchNotice(
  change: Change,
  { storeId, batch, maker, what, items }: NoticedBatch & { storeId: number; what: string; items: number },
): Promise<number> {
  const detail = { batch, maker, items: String(items), what, by: change.actor.name };
  const [kind, jobId] = ['batchQuarantined', null] as const;
  const raised = { raisedAt: change.at, settledAt: null, mailedAt: null };
  const row = change.manager.create(NoticeEntity, { kind, storeId, itemId: null, jobId, detail, ...raised });
  await change.manager.insert(NoticeEntity, row);
  change.note({
    action: 'notice.raised',
    ...BATCH_SUBJECT,
    detail: { noticeId: row.id, kind, jobId, storeId, ...detail },
  });
  return row.id;
}

/** Settles the open notice of a batch. What is out of service stays so. */
export async function settleBatchNotice(
  change: Change,
  id: number,
  { batch, maker }: NoticedBatch,
): Promise<void> {
  await change.manager.update(NoticeEntity, { id }, { settledAt: change.at });
  change.note({ action: 'notice.settled', ...BATCH_SUBJECT, detail: { batch, maker, noticeId: id } });
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
