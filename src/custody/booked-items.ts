import { In, Not, type EntityManager } from 'typeorm';
import { BookedItemEntity } from './booked-item.entity.js';
import type { BookedItemView } from './booking.dto.js';

/** A promise together with the item's tag, kind and store. */
export type BookedItem = BookedItemView & { readonly jobId: number; readonly version: number };

/** Every promise to the jobs that was not given up, in the order it was made. */
export async function bookedItems(manager: EntityManager, jobIds: readonly number[]): Promise<BookedItem[]> {
  if (jobIds.length === 0) return [];
  const rows = await manager
    .createQueryBuilder(BookedItemEntity, 'row')
    .innerJoin('row.item', 'item')
    .innerJoin('item.store', 'store')
    .addSelect(['item.id', 'item.tag', 'item.kind', 'store.id', 'store.name'])
    .where({ jobId: In([...jobIds]), state: Not('released') })
    .orderBy('row.id')
    .getMany();
  return rows.map(({ id, jobId, itemId, item, lineKey, fromDay, toDay, state, returnRemarks, version }) => ({
    id,
    jobId,
    itemId,
    tag: item?.tag ?? '',
    kind: item?.kind ?? '',
    storeName: item?.store?.name ?? '',
    lineKey,
    fromDay,
    toDay,
    state,
    returnRemarks,
    version,
  }));
}

/** True while the item is kept from others: promised and in the store, or out. */
export function isLive({ state }: Pick<BookedItemView, 'state'>): boolean {
  return state === 'reserved' || state === 'out';
}

/** The items as the API gives them. */
export function asBookedItemView({ jobId: _jobId, version: _version, ...view }: BookedItem): BookedItemView {
  return view;
}
