import type { EntityManager } from 'typeorm';
import { DocumentEntity } from './document.entity.js';

/** Whether a certificate is kept that belongs to a record of an inspection. */
export function hasCertificate(manager: EntityManager, inspectionId: number): Promise<boolean> {
  return manager.existsBy(DocumentEntity, { kind: 'certificate', inspectionId });
}
