import { Injectable } from '@nestjs/common';
import { Clock } from '../clock.js';
import { countedLifts } from '../custody/lift-counts.js';
import { staysOfItem } from '../custody/stays.js';
import { requireDefect, type ReportedDefect } from '../inspections/records-of-items.js';
import { Ledger } from '../ledger/ledger.service.js';
import { PeopleService } from '../people/people.service.js';
import { RegisterService } from '../register/register.service.js';
import { Reads } from '../storage/reads.js';
import { StoresService } from '../stores/stores.service.js';
import { traceOf, type HandOver } from './trace-of.js';
import type { DefectTraceView } from './trace.dto.js';
import { tracedRecords } from './traced-records.js';

/** More lines of the ledger than any item gathers in its life. */
const MOST_LINES = 5_000;

const HAND_OVERS: Readonly<Record<string, HandOver['way']>> = {
  'item.handedOut': 'out',
  'item.broughtBack': 'in',
  'item.notReturned': 'in',
  'item.found': 'in',
};

/** Traces a defect back to the last good inspection: every job, day and person in between. */
@Injectable()
export class Traces {
  constructor(
    private readonly reads: Reads,
    private readonly register: RegisterService,
    private readonly stores: StoresService,
    private readonly people: PeopleService,
    private readonly ledger: Ledger,
    private readonly clock: Clock,
  ) {}

  /** @throws Problem `not_found`. */
  async ofDefect(id: number): Promise<DefectTraceView> {
    const { manager } = this.reads;
    const defect = await requireDefect(manager, id);
    const item = await this.register.get(defect.itemId);
    const { timeZone } = await this.stores.get(item.storeId);
    const stays = await staysOfItem(manager, item.id, this.clock);
    const found = {
      reportedOn: this.clock.dayAt(defect.recordedAt, timeZone),
      stays,
      records: await tracedRecords(manager, [item.id]),
      lifts: await countedLifts(
        manager,
        stays.map(({ jobId }) => jobId),
      ),
      handOvers: await this.handOvers(item.id),
    };
    const reporter = await this.nameOf(defect);
    return traceOf({ ...defect, tag: item.tag, reporter }, found);
  }

  private async nameOf({ reportedBy }: ReportedDefect): Promise<string | null> {
    return (await this.people.list()).find(({ id }) => id === reportedBy)?.name ?? null;
  }

  private async handOvers(itemId: number): Promise<HandOver[]> {
    const lines = await this.ledger.newest(MOST_LINES, { kind: 'item', id: itemId });
    return lines.flatMap(({ action, at, actorName }) => {
      const way = HAND_OVERS[action];
      return way ? [{ way, at, by: actorName }] : [];
    });
  }
}
