import { Not, type EntityManager } from 'typeorm';
import { ItemEntity } from './item.entity.js';

/** Which of the stores keep gear: anything that is not scrapped. */
export async function storesWithGear(
  manager: EntityManager,
  storeIds: readonly number[],
): Promise<readonly number[]> {
  const kept: number[] = [];
  for (const storeId of storeIds) {
    if (await manager.existsBy(ItemEntity, { storeId, condition: Not('scrapped') })) kept.push(storeId);
  }
  return kept;
}
