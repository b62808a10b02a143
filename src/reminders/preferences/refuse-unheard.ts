import type { EntityManager } from 'typeorm';
import { Problem } from '../../problem.js';
import { storesWithGear } from '../../register/stores-with-gear.js';
import { storesUnheard, type Hearer } from '../../rules/reminders/addressees.js';
import { findStores } from '../../stores/find-store.js';
import { listed } from '../../web/sentences/words.js';

/**
 * Refuses a change of choices that leaves a store with gear to nobody's ears where it had somebody's before. Stores that
 * had nobody already are no reason: no single choice would mend them.
 * @throws Problem `overdue_unheard` that names the stores and what to do first.
 */
export async function refuseUnheard(
  manager: EntityManager,
  { before, after }: { before: readonly Hearer[]; after: readonly Hearer[] },
): Promise<void> {
  const stores = await findStores(manager);
  const ids = stores.map(({ id }) => id);
  const already = storesUnheard(ids, before);
  const lost = storesUnheard(ids, after).filter((id) => !already.includes(id));
  const withGear = await storesWithGear(manager, lost);
  if (withGear.length === 0) return;
  const names = listed(stores.filter(({ id }) => withGear.includes(id)).map(({ name }) => name));
  throw new Problem(
    'overdue_unheard',
    `Nobody else hears of overdue gear at ${names}. Ask another storeman, manager or competent person to choose mail of ${names} first.`,
    { members: { storeIds: withGear } },
  );
}
