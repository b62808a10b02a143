import type { AffectedJob, CommitmentsService } from '../custody/commitments.service.js';
import type { Change } from '../ledger/ledger.service.js';
import { takeOutOfService, type LockedItem } from '../register/item-condition.js';
import { toDay, type Day } from '../rules/calendar/day.js';
import type { NewInspectionDto } from './inspections.dto.js';

/**
 * What an inspection leads to at once, inside its change: quarantine where it found the item unfit, and flags on the
 * jobs that need it longer than it is good for, or that cannot have it without its report. Gives those jobs.
 */
export async function followInspection(
  change: Change,
  item: LockedItem,
  {
    input,
    today,
    lostReport,
    commitments,
  }: {
    input: Pick<NewInspectionDto, 'doneOn' | 'outcome' | 'nextDueOn' | 'remarks'>;
    today: Day;
    /** Whether it leaves the item without a report that it needs and had till then. */
    lostReport: boolean;
    commitments: CommitmentsService;
  },
): Promise<AffectedJob[]> {
  const { doneOn, outcome, nextDueOn, remarks } = input;
  const because = 'inspection.recorded';
  if (outcome === 'fit') {
    if (lostReport) return commitments.flag(change, item, { because, today });
    if (nextDueOn === undefined) return [];
    return commitments.flag(change, item, { because, today, fitThrough: toDay(nextDueOn) });
  }
  const reason = `Found unfit on ${doneOn}${remarks === undefined ? '' : `: ${remarks}`}`.slice(0, 500);
  if (item.condition === 'inService')
    await takeOutOfService(change, item, { condition: 'quarantined', reason, today });
  return commitments.flag(change, item, { because, today });
}
