import type { EntityManager } from 'typeorm';
import type { Change } from '../ledger/ledger.service.js';
import { Problem } from '../problem.js';
import { lockItem } from './item-condition.js';
import { ItemEntity } from './item.entity.js';
import { identityKey } from '../rules/text/look-alike.js';

/** An item as it is at the counter, locked. */
export type TaggedItem = Awaited<ReturnType<typeof lockItem>>;

/**
 * The number of the item with the tag that was scanned or typed.
 * @throws Problem `not_found`.
 */
export async function findTagged(manager: EntityManager, tag: string): Promise<Pick<ItemEntity, 'id'>> {
  const found = await manager.findOne(ItemEntity, {
    select: { id: true },
    where: { tagKey: identityKey(tag) },
  });
  if (!found)
    throw new Problem(
      'not_found',
      `No item carries the tag '${tag}'. Read it again, or look it up in the register.`,
    );
  return found;
}

/**
 * The item with the tag that was scanned or typed, locked for this change and read afresh.
 * @throws Problem `not_found`.
 */
export async function lockTagged(change: Change, tag: string): Promise<TaggedItem> {
  return lockItem(change, (await findTagged(change.manager, tag)).id);
}
