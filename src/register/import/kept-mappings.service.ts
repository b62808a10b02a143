import { Injectable } from '@nestjs/common';
import { Clock } from '../../clock.js';
import { Reads } from '../../storage/reads.js';
import { UnitOfWork } from '../../storage/unit-of-work.js';
import { ImportMappingEntity } from '../import-mapping.entity.js';
import { headingsSignature, readMapping, type ImportMapping } from './mapping.js';

/** Mappings that a storeman made once, for the next file with the same headings. A convenience, so outside the ledger. */
@Injectable()
export class KeptMappings {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly reads: Reads,
    private readonly clock: Clock,
  ) {}

  /** The mapping kept for files with these headings. */
  async find(headings: readonly string[]): Promise<ImportMapping | undefined> {
    const kept = await this.reads.manager.findOneBy(ImportMappingEntity, {
      signature: headingsSignature(headings),
    });
    return kept ? readMapping(kept.mapping) : undefined;
  }

  /** Keeps a mapping, in place of an earlier one. */
  async keep(headings: readonly string[], mapping: ImportMapping): Promise<void> {
    const row = { signature: headingsSignature(headings), mapping, updatedAt: this.clock.now() };
    await this.unitOfWork.run((manager) => manager.upsert(ImportMappingEntity, row, ['signature']));
  }
}
