import { Injectable } from '@nestjs/common';
import { Catalogue } from '../catalogue/catalogue.js';
import { Clock } from '../clock.js';
import { CommitmentsService } from '../custody/commitments.service.js';
import { GearFacts } from '../planner/gear-facts.service.js';
import { compareNaturally } from '../rules/allocation/natural-order.js';
import { Reads } from '../storage/reads.js';
import type { StoreView } from './stores.dto.js';
import { pegOf, type Peg } from './tally.js';

/** The pegs of one kind, and how many of them there are in all. */
export interface Rail {
  readonly kind: string;
  readonly name: string;
  readonly pegs: readonly Peg[];
  readonly total: number;
}

/** More pegs of a kind than this are counted, not hung: the register finds them. */
const MOST_PEGS = 240;

/** The store as a tally board: a peg per item, a rail per kind. */
@Injectable()
export class BoardService {
  constructor(
    private readonly reads: Reads,
    private readonly gearFacts: GearFacts,
    private readonly commitments: CommitmentsService,
    private readonly catalogue: Catalogue,
    private readonly clock: Clock,
  ) {}

  /** The rails of a store in the catalogue's order; what is scrapped hangs nowhere. */
  async rails(store: StoreView): Promise<Rail[]> {
    const { manager } = this.reads;
    const today = this.clock.today(store.timeZone);
    const scheme = this.catalogue.scheme(store.scheme);
    const filter = { storeId: store.id };
    const gear = (await this.gearFacts.load(manager, filter, today)).filter(
      ({ condition }) => condition !== 'scrapped',
    );
    const open = await this.commitments.open(manager, filter, today);
    return this.catalogue.kinds().flatMap((kind) => {
      const own = gear
        .filter((item) => item.kind === kind.kind)
        .sort((a, b) => compareNaturally(a.tag, b.tag));
      const pegs = own
        .slice(0, MOST_PEGS)
        .map((item) => pegOf(item, open.get(item.itemId) ?? [], { kind, scheme, today }));
      return own.length === 0 ? [] : [{ kind: kind.kind, name: kind.plural, pegs, total: own.length }];
    });
  }
}
