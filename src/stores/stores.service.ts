import { Injectable } from '@nestjs/common';
import { Catalogue } from '../catalogue/catalogue.js';
import { refuseStale } from '../http/version.js';
import { badInput } from '../http/input.js';
import { Ledger } from '../ledger/ledger.service.js';
import type { Actor } from '../people/actor.js';
import { Problem } from '../problem.js';
import { identityKey } from '../rules/text/look-alike.js';
import { isUniqueViolation } from '../storage/engine-errors.js';
import { Reads } from '../storage/reads.js';
import { StoreEntity } from './store.entity.js';
import type { ChangeStoreDto, NewStoreDto, StoreView } from './stores.dto.js';

/** The places where gear is kept, each with its inspection rules and its own today. */
@Injectable()
export class StoresService {
  constructor(
    private readonly ledger: Ledger,
    private readonly reads: Reads,
    private readonly catalogue: Catalogue,
  ) {}

  /** Every store, by name. */
  async list(): Promise<StoreView[]> {
    const stores = await this.reads.manager.find(StoreEntity, { order: { name: 'ASC' } });
    return stores.map(asView);
  }

  /** @throws Problem `not_found`. */
  async get(id: number): Promise<StoreView> {
    const store = await this.reads.manager.findOneBy(StoreEntity, { id });
    if (!store) throw noSuchStore(id);
    return asView(store);
  }

  /** @throws Problem `store_name_taken`, `bad_input` of an unknown scheme. */
  async create(actor: Actor, input: NewStoreDto): Promise<StoreView> {
    this.requireScheme(input.scheme);
    return this.ledger.change(actor, async (change) => {
      const { name, address, scheme, timeZone } = input;
      const row = change.manager.create(StoreEntity, {
        name,
        nameKey: identityKey(name),
        address,
        scheme,
        timeZone,
        version: 1,
      });
      await change.manager.insert(StoreEntity, row).catch(sayNameTaken(name));
      change.note({ action: 'store.created', subjectKind: 'store', subjectId: row.id, detail: { ...input } });
      return asView(row);
    });
  }

  /** @throws Problem `not_found`, `changed_meanwhile`, `store_name_taken`, `bad_input` of an unknown scheme. */
  async edit(
    actor: Actor,
    id: number,
    { version, input }: { version: number; input: ChangeStoreDto },
  ): Promise<StoreView> {
    if (input.scheme !== undefined) this.requireScheme(input.scheme);
    return this.ledger.change(actor, async (change) => {
      await change.lock('store', [id]);
      const store = await change.manager.findOneBy(StoreEntity, { id });
      if (!store) throw noSuchStore(id);
      refuseStale(`Store '${store.name}'`, { read: version, now: store.version });
      const {
        name = store.name,
        address = store.address,
        scheme = store.scheme,
        timeZone = store.timeZone,
      } = input;
      const next = { name, nameKey: identityKey(name), address, scheme, timeZone, version: version + 1 };
      await change.manager.update(StoreEntity, { id }, next).catch(sayNameTaken(name));
      change.note({
        action: 'store.edited',
        subjectKind: 'store',
        subjectId: id,
        detail: { name, address, scheme, timeZone },
      });
      return asView({ ...next, id });
    });
  }

  private requireScheme(scheme: string): void {
    const known = this.catalogue.schemes().map((entry) => entry.scheme);
    if (!known.includes(scheme))
      throw badInput([{ field: 'scheme', message: `choose from ${known.join(', ')}` }]);
  }
}

function noSuchStore(id: number): Problem {
  return new Problem('not_found', `There is no store with the number ${id}.`);
}

function sayNameTaken(name: string) {
  return (error: unknown): never => {
    if (!isUniqueViolation(error)) throw error;
    throw new Problem(
      'store_name_taken',
      `'${name}' is the name of another store, give or take case and spaces.`,
    );
  };
}

function asView({ id, name, address, scheme, timeZone, version }: StoreView): StoreView {
  return { id, name, address, scheme, timeZone, version };
}
