import type { EntityManager } from 'typeorm';
import { addDays, toDay, type Day } from '../../rules/calendar/day.js';
import { DigestRunEntity } from './digest-run.entity.js';
import type { PastRun } from './told-stores.js';

/** What was told longer ago is told again: no lead time that matters is older. */
const DAYS_LOOKED_BACK = 100;

/**
 * The digests of a person before a day that were sent or had nothing to say, and the first day on which any was
 * decided. Mail that still waits does not count, not even what is being sent this moment: should that fail, its days
 * are told by the next, and telling them twice does no harm.
 */
export async function pastRuns(
  manager: EntityManager,
  { personId, before }: { personId: number; before: Day },
): Promise<{ readonly runs: readonly PastRun[]; readonly since: Day | undefined }> {
  const rows = await manager
    .createQueryBuilder(DigestRunEntity, 'run')
    .leftJoin('run.mail', 'mail')
    .addSelect(['mail.id', 'mail.state'])
    .where('run.personId = :personId', { personId })
    .andWhere('run.onDay < :before AND run.onDay >= :from', {
      before,
      from: addDays(before, -DAYS_LOOKED_BACK),
    })
    .orderBy('run.onDay')
    .getMany();
  const counting = rows.filter(({ mailId, mail }) => mailId === null || mail?.state === 'sent');
  const [first] = rows;
  return {
    runs: counting.map(({ onDay, decidedAt, told }) => ({ onDay: toDay(onDay), decidedAt, told })),
    since: first && toDay(first.onDay),
  };
}

/** Of the people, those whose digest of their day was decided already. */
export async function decidedToday(
  manager: EntityManager,
  people: readonly { readonly personId: number; readonly today: Day }[],
): Promise<ReadonlySet<number>> {
  if (people.length === 0) return new Set();
  const rows = await manager
    .createQueryBuilder(DigestRunEntity, 'run')
    .where('run.personId IN (:...ids)', { ids: people.map(({ personId }) => personId) })
    .andWhere('run.onDay IN (:...days)', { days: [...new Set(people.map(({ today }) => today))] })
    .getMany();
  const decided = new Set(rows.map(({ personId, onDay }) => `${personId} ${onDay}`));
  return new Set(
    people
      .filter(({ personId, today }) => decided.has(`${personId} ${today}`))
      .map(({ personId }) => personId),
  );
}
