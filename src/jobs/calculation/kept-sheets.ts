import { createHash } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import type { Catalogue } from '../../catalogue/catalogue.js';
import { canonicalJson } from '../../ledger/canonical-json.js';
import type { Change } from '../../ledger/ledger.service.js';
import { CalculationSheetEntity } from './calculation-sheet.entity.js';
import type { Job } from '../load-job.js';
import { calculationSheet, type CalculationSheet } from './calculation-sheet.js';

/** A sheet that was kept when gear was reserved. */
export interface KeptSheet {
  readonly id: number;
  readonly keptAt: string;
  readonly fingerprint: string;
}

/**
 * Keeps the sheet of a job beside what is reserved in the same change, unless the last one kept says the same.
 */
export async function keepSheet(change: Change, job: Job, catalogue: Catalogue): Promise<void> {
  const { sheet } = calculationSheet(job, catalogue);
  const fingerprint = fingerprintOf(sheet);
  const [last] = await keptSheets(change.manager, job.id);
  if (last?.fingerprint === fingerprint) return;
  await change.manager.insert(CalculationSheetEntity, {
    jobId: job.id,
    keptAt: change.at,
    fingerprint,
    sheet,
  });
  change.note({
    action: 'job.calculationKept',
    subjectKind: 'job',
    subjectId: job.id,
    detail: { fingerprint },
  });
}

/** The sheets kept for a job, the latest first. */
export async function keptSheets(manager: EntityManager, jobId: number): Promise<KeptSheet[]> {
  return manager.find(CalculationSheetEntity, {
    select: { id: true, keptAt: true, fingerprint: true },
    where: { jobId },
    order: { id: 'DESC' },
  });
}

/** One kept sheet of a job; undefined where there is none of that number. */
export async function readKept(
  manager: EntityManager,
  jobId: number,
  id: number,
): Promise<(KeptSheet & { readonly sheet: CalculationSheet }) | undefined> {
  return (await manager.findOneBy(CalculationSheetEntity, { id, jobId })) ?? undefined;
}

/** SHA-256 of the sheet as canonical JSON (RFC 8785), so that equal sheets have equal fingerprints. */
function fingerprintOf(sheet: CalculationSheet): string {
  return createHash('sha256').update(canonicalJson(sheet), 'utf8').digest('hex');
}
