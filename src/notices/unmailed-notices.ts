import { In, IsNull, type EntityManager } from 'typeorm';
import { toDay, type Day } from '../rules/calendar/day.js';
import { NoticeEntity } from './notice.entity.js';

/** A notice as it is told by mail: of one item, or of a maker's batch. */
export interface UnmailedNotice {
  readonly id: number;
  readonly kind: string;
  readonly storeId: number;
  readonly item: { readonly id: number; readonly tag: string; readonly kind: string } | null;
  readonly batch: { readonly batch: string; readonly maker: string; readonly items: number } | null;
  /** What was found, and who found it. */
  readonly what: string;
  readonly by: string;
  /** Of a danger by a day: the last day on which it may be used. */
  readonly lastDayOfUse: Day | null;
  readonly raisedAt: string;
  readonly settled: boolean;
}

/**
 * Takes the notices of some stores that nobody was told of by mail, and marks them as told, in the caller's
 * transaction. Of two servers one gets each.
 */
export async function takeUnmailed(
  manager: EntityManager,
  { at, storeIds }: { at: string; storeIds: readonly number[] },
): Promise<UnmailedNotice[]> {
  if (storeIds.length === 0) return [];
  const rows = await manager.find(NoticeEntity, {
    where: { mailedAt: IsNull(), storeId: In([...storeIds]) },
    relations: { item: true },
    order: { id: 'ASC' },
  });
  const taken: UnmailedNotice[] = [];
  for (const row of rows) {
    const { affected } = await manager.update(
      NoticeEntity,
      { id: row.id, mailedAt: IsNull() },
      { mailedAt: at },
    );
    if (affected === 1) taken.push(asUnmailed(row));
  }
  return taken;
}

function asUnmailed({ id, kind, storeId, item, detail, raisedAt, settledAt }: NoticeEntity): UnmailedNotice {
  const { batch, maker = '', items = '0', what = '', by = '' } = detail;
  return {
    id,
    kind,
    storeId,
    item: item ? { id: item.id, tag: item.tag, kind: item.kind } : null,
    batch: batch === undefined ? null : { batch, maker, items: Number(items) },
    what,
    by,
    lastDayOfUse: detail['lastDayOfUse'] === undefined ? null : toDay(detail['lastDayOfUse']),
    raisedAt,
    settled: settledAt !== null,
  };
}
