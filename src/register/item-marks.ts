import type { EntityManager } from 'typeorm';
import type { Condition } from '../rules/gear/gear.js';
import { lookAlikeKey } from '../rules/text/look-alike.js';
import { ItemEntity } from './item.entity.js';

/** What one item is told from another by, beside the gear itself. */
export interface ItemMarks {
  readonly id: number;
  readonly tag: string;
  readonly tagKey: string;
  readonly serial: string | null;
  readonly maker: string;
  readonly kind: string;
  readonly condition: Condition;
  readonly storeId: number;
  readonly storeName: string;
}

/** The marks of some items by their numbers. */
export async function itemMarks(
  manager: EntityManager,
  ids: readonly number[],
): Promise<ReadonlyMap<number, ItemMarks>> {
  if (ids.length === 0) return new Map();
  const rows = await manager
    .createQueryBuilder(ItemEntity, 'item')
    .innerJoin('item.store', 'store')
    .select(['item.id', 'item.tag', 'item.tagKey', 'item.serial', 'item.maker', 'item.kind'])
    .addSelect(['item.condition', 'item.storeId', 'store.id', 'store.name'])
    .whereInIds([...ids])
    .getMany();
  return new Map(
    rows.map(({ id, tag, tagKey, serial, maker, kind, condition, storeId, store }) => [
      id,
      { id, tag, tagKey, serial, maker, kind, condition, storeId, storeName: store?.name ?? '' },
    ]),
  );
}

/**
 * The numbers of the items whose tag reads like the one given, O like 0 and I like 1: the item that carries exactly
 * this tag too.
 */
export async function itemsTaggedLike(manager: EntityManager, tag: string): Promise<number[]> {
  const wanted = lookAlikeKey(tag);
  if (wanted === '') return [];
  const rows = await manager.find(ItemEntity, {
    select: { id: true },
    where: { tagLookAlikeKey: wanted },
    order: { id: 'ASC' },
  });
  return rows.map(({ id }) => id);
}
