import type { EntityManager } from 'typeorm';
import { LedgerEntryEntity } from './ledger.entity.js';
import type { Note } from './ledger.service.js';

/** What the lines of one subject that say the same action were written with, the first line first. */
export async function detailsOf(
  manager: EntityManager,
  { subjectKind, subjectId, action }: Required<Pick<Note, 'subjectKind' | 'subjectId' | 'action'>>,
): Promise<unknown[]> {
  const lines = await manager.find(LedgerEntryEntity, {
    where: { subjectKind, subjectId: String(subjectId), action },
    order: { number: 'ASC' },
  });
  return lines.map(({ detail }): unknown => JSON.parse(detail));
}
