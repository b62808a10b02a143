import { In, type EntityManager } from 'typeorm';
import { ItemEntity } from './item.entity.js';

/** The instants at which items were entered in the register, by their numbers. */
export async function enteredAt(
  manager: EntityManager,
  itemIds: readonly number[],
): Promise<ReadonlyMap<number, string>> {
  const items = await manager.find(ItemEntity, {
    select: { id: true, createdAt: true },
    where: { id: In([...itemIds]) },
  });
  return new Map(items.map(({ id, createdAt }) => [id, createdAt]));
}
