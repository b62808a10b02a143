import { bookedItems, isLive } from '../custody/booked-items.js';
import type { Job } from '../jobs/load-job.js';
import { lastEntry } from '../ledger/last-entry.js';
import type { Change } from '../ledger/ledger.service.js';
import type { LockedItem } from '../register/item-condition.js';
import type { CheckConflictView, ConflictCode } from './checks.dto.js';

/**
 * What the one who checked a locked item could not know, such as a phone without a network: that someone else took the
 * item out of service, or that it is not on the job. Read before the check changes anything.
 */
export async function conflictOf(
  change: Change,
  item: LockedItem,
  job: Job | undefined,
): Promise<CheckConflictView | undefined> {
  if (item.condition === 'quarantined')
    return takenOut(change, item, { code: 'already_quarantined', action: 'item.quarantined' });
  if (item.condition === 'underRepair')
    return takenOut(change, item, { code: 'under_repair', action: 'item.repairStarted' });
  if (!job) return undefined;
  if (job.cancelled) return { code: 'job_cancelled' };
  const rows = (await bookedItems(change.manager, [job.id])).filter(({ itemId }) => itemId === item.id);
  if (rows.some(isLive)) return undefined;
  return { code: rows.length > 0 ? 'left_job' : 'not_on_job' };
}

async function takenOut(
  { manager }: Change,
  item: LockedItem,
  { code, action }: { code: ConflictCode; action: string },
): Promise<CheckConflictView> {
  const entry = await lastEntry(manager, { action, subjectKind: 'item', subjectId: item.id });
  return { code, ...(entry && { at: entry.at, by: entry.actorName }) };
}
