import type { EntityManager } from 'typeorm';
import { LedgerEntryEntity } from './ledger.entity.js';
import type { Note } from './ledger.service.js';

/** When and by whom something was last done to a subject, read through the manager given; undefined when never. */
export async function lastEntry(
  manager: EntityManager,
  { action, subjectKind, subjectId }: Pick<Note, 'action' | 'subjectKind' | 'subjectId'>,
): Promise<{ readonly at: string; readonly actorName: string } | undefined> {
  const entry = await manager.findOne(LedgerEntryEntity, {
    select: { number: true, at: true, actorName: true },
    where: { action, subjectKind, subjectId: String(subjectId) },
    order: { number: 'DESC' },
  });
  return entry ?? undefined;
}
