import { Injectable } from '@nestjs/common';
import { Clock } from '../clock.js';
import { CommitmentsService, type OpenCommitment } from '../custody/commitments.service.js';
import { reportedDefects, type ReportedDefect } from '../inspections/records-of-items.js';
import type { Actor } from '../people/actor.js';
import { PeopleService } from '../people/people.service.js';
import { outOfService, type ItemBrief } from '../register/item-briefs.js';
import { Reads } from '../storage/reads.js';
import { StoresService } from '../stores/stores.service.js';
import type { WaitingItemView } from './quarantine.dto.js';

/** Someone whose name a list of what waits may show. */
interface Person {
  readonly id: number;
  readonly name: string;
  readonly roles: readonly string[];
  readonly active: boolean;
}

/** Everything that is in quarantine or under repair: since when, why, and what it waits for. */
@Injectable()
export class Quarantine {
  constructor(
    private readonly reads: Reads,
    private readonly commitments: CommitmentsService,
    private readonly stores: StoresService,
    private readonly people: PeopleService,
    private readonly clock: Clock,
  ) {}

  /** What waits, as `me` is told: store by store in the order of their names, and there by tag. */
  async list(me: Actor): Promise<WaitingItemView[]> {
    const { manager } = this.reads;
    const items = await outOfService(manager);
    const people = await this.people.list();
    const defects = await reportedDefects(
      manager,
      items.map(({ id }) => id),
    );
    const waiting: WaitingItemView[] = [];
    for (const { id: storeId, timeZone } of await this.stores.list()) {
      const inStore = items.filter((item) => item.storeId === storeId);
      const itemIds = inStore.map(({ id }) => id);
      const promises = await this.commitments.open(manager, { itemIds }, this.clock.today(timeZone));
      for (const item of inStore) {
        const open = defects.filter(
          ({ itemId, closedByInspectionId }) => itemId === item.id && closedByInspectionId === null,
        );
        waiting.push(asWaiting(item, { me, open, people, promises: promises.get(item.id) ?? [] }));
      }
    }
    return waiting;
  }
}

function asWaiting(
  item: ItemBrief,
  {
    me,
    open,
    people,
    promises,
  }: {
    me: Actor;
    open: readonly ReportedDefect[];
    people: readonly Person[];
    promises: readonly OpenCommitment[];
  },
): WaitingItemView {
  const examiners = mayExamine(item, open, people);
  const { id, tag, kind, maker, batch, storeId, storeName, condition } = item;
  return {
    ...{ itemId: id, tag, kind, maker, batch, storeId, storeName, condition },
    since: item.conditionSince,
    reason: item.conditionReason,
    reportedBy: people.find((person) => person.id === item.conditionReportedBy)?.name ?? null,
    mayExamine: examiners.map(({ name }) => name),
    youMayExamine: examiners.some((person) => person.id === me.id),
    openDefects: open.map(({ id: defectId, severity, description, lastDayOfUse }) => {
      return { id: defectId, severity, description, lastDayOfUse };
    }),
    jobs: promises.map(({ jobId, jobReference, from, to, out }) => {
      return { jobId, reference: jobReference, from, to, out };
    }),
  };
}

/** The same people that a release would be taken from: nobody passes what they reported themselves. */
function mayExamine(
  { conditionReportedBy }: ItemBrief,
  open: readonly ReportedDefect[],
  people: readonly Person[],
): readonly Person[] {
  const dangers = open.filter(({ severity }) => severity !== 'observation');
  const reporters = [conditionReportedBy, ...dangers.map(({ reportedBy }) => reportedBy)];
  return people.filter(
    ({ id, active, roles }) => active && roles.includes('competentPerson') && !reporters.includes(id),
  );
}
