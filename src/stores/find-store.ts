import type { EntityManager } from 'typeorm';
import { StoreEntity } from './store.entity.js';
import type { StoreView } from './stores.dto.js';

/** A store as a change sees it, read through the change's own manager; undefined when there is none. */
export async function findStore(manager: EntityManager, id: number): Promise<StoreView | undefined> {
  return (await manager.findOneBy(StoreEntity, { id })) ?? undefined;
}

/** Every store as a change sees it, by name. */
export function findStores(manager: EntityManager): Promise<StoreView[]> {
  return manager.find(StoreEntity, { order: { name: 'ASC', id: 'ASC' } });
}
