import { Injectable } from '@nestjs/common';
import { Catalogue } from '../../catalogue/catalogue.js';
import { Clock } from '../../clock.js';
import { Reads } from '../../storage/reads.js';
import { UnitOfWork } from '../../storage/unit-of-work.js';
import { StoresService } from '../../stores/stores.service.js';
import { DueSchemeEntity } from './due-scheme.entity.js';
import { schemeFingerprint } from './scheme-fingerprint.js';

interface Fingerprint {
  readonly scheme: string;
  readonly fingerprint: string;
}

/** Notices when a scheme asks something else than before: by another `config/`, or by an entry that comes into force. */
@Injectable()
export class SchemeWatch {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly reads: Reads,
    private readonly stores: StoresService,
    private readonly catalogue: Catalogue,
    private readonly clock: Clock,
  ) {}

  /** Marks every item of a store stale whose scheme asks something else than when this was called last. */
  async markChanged(): Promise<void> {
    const known = await this.reads.manager.find(DueSchemeEntity);
    const changed = (await this.fingerprints()).filter(
      ({ scheme, fingerprint }) => known.find((row) => row.scheme === scheme)?.fingerprint !== fingerprint,
    );
    if (changed.length > 0) await this.mark(changed);
  }

  private async fingerprints(): Promise<Fingerprint[]> {
    const stores = await this.stores.list();
    return this.catalogue.schemes().flatMap((definition) => {
      const days = stores
        .filter(({ scheme }) => scheme === definition.scheme)
        .map(({ timeZone }) => this.clock.today(timeZone));
      if (days.length === 0) return [];
      return [{ scheme: definition.scheme, fingerprint: schemeFingerprint(definition, days) }];
    });
  }

  private async mark(changed: readonly Fingerprint[]): Promise<void> {
    await this.unitOfWork.run(async (manager) => {
      for (const { scheme, fingerprint } of changed) {
        await manager.query(
          `INSERT INTO due_stale (item_id)
           SELECT item.id FROM item JOIN store ON store.id = item.store_id WHERE store.scheme = $1`,
          [scheme],
        );
        await manager.upsert(DueSchemeEntity, { scheme, fingerprint }, ['scheme']);
      }
    });
  }
}
