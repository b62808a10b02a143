import { In, type EntityManager, type FindOptionsWhere } from 'typeorm';
import { ItemEntity } from './item.entity.js';

/** What an item is and whether it may be used, without its dates. */
export type ItemBrief = Pick<
  ItemEntity,
  | 'id'
  | 'tag'
  | 'kind'
  | 'maker'
  | 'serial'
  | 'batch'
  | 'markings'
  | 'storeId'
  | 'condition'
  | 'conditionReason'
  | 'conditionReportedBy'
  | 'conditionSince'
> & { readonly storeName: string };

/** Items by their numbers, in the order of their tags. */
export function itemBriefs(manager: EntityManager, itemIds: readonly number[]): Promise<ItemBrief[]> {
  return briefs(manager, { id: In([...itemIds]) });
}

/** Everything that is quarantined or under repair, in the order of the tags. */
export function outOfService(manager: EntityManager): Promise<ItemBrief[]> {
  return briefs(manager, { condition: In(['quarantined', 'underRepair']) });
}

async function briefs(manager: EntityManager, where: FindOptionsWhere<ItemEntity>): Promise<ItemBrief[]> {
  const items = await manager.find(ItemEntity, {
    where,
    relations: { store: true },
    order: { tagKey: 'ASC' },
  });
  return items.map((item) => ({
    id: item.id,
    tag: item.tag,
    kind: item.kind,
    maker: item.maker,
    serial: item.serial,
    batch: item.batch,
    markings: item.markings,
    storeId: item.storeId,
    storeName: item.store?.name ?? '',
    condition: item.condition,
    conditionReason: item.conditionReason,
    conditionReportedBy: item.conditionReportedBy,
    conditionSince: item.conditionSince,
  }));
}
