import { In, IsNull, Not, type EntityManager } from 'typeorm';
import type { Change } from '../ledger/ledger.service.js';
import { identityKey } from '../rules/text/look-alike.js';
import type { LockedItem } from './item-condition.js';
import { ItemEntity } from './item.entity.js';

/** A maker's batch. */
export interface Batch {
  readonly batch: string;
  readonly maker: string;
}

/** The key under which two ways of writing one batch meet: a recall must not miss an item for a hyphen. */
export function batchKey(batch: string | null): string | null {
  return batch === null ? null : identityKey(batch);
}

/** Every way in which the register writes a batch. */
export async function batchSpellings(manager: EntityManager, batch: string): Promise<string[]> {
  const rows = await manager
    .createQueryBuilder(ItemEntity, 'item')
    .select('DISTINCT item.batch', 'batch')
    .where({ batch: Not(IsNull()) })
    .getRawMany<{ batch: string }>();
  return rows.map((row) => row.batch).filter((known) => batchKey(known) === batchKey(batch));
}

/** The makers that have items of a batch of that name, in alphabetical order. */
export async function makersOfBatch(manager: EntityManager, batch: string): Promise<string[]> {
  const items = await manager.find(ItemEntity, {
    select: { id: true, maker: true, makerKey: true },
    where: { batch: In(await batchSpellings(manager, batch)) },
    order: { makerKey: 'ASC', id: 'ASC' },
  });
  return [...new Map(items.map(({ makerKey, maker }) => [makerKey, maker])).values()];
}

/** The numbers of all items of a maker's batch, scrapped ones too, in the order of their tags. */
export async function batchItemIds(manager: EntityManager, batch: Batch): Promise<number[]> {
  const items = await manager.find(ItemEntity, {
    select: { id: true },
    where: await whereBatch(manager, batch),
    order: { tagKey: 'ASC' },
  });
  return items.map(({ id }) => id);
}

/** All items of a maker's batch, locked for this change and read afresh. */
export async function lockBatch(change: Change, batch: Batch): Promise<LockedItem[]> {
  await change.lock('item', await batchItemIds(change.manager, batch));
  return change.manager.find(ItemEntity, {
    where: await whereBatch(change.manager, batch),
    order: { id: 'ASC' },
  });
}

async function whereBatch(manager: EntityManager, { batch, maker }: Batch) {
  return { makerKey: identityKey(maker), batch: In(await batchSpellings(manager, batch)) };
}
