import { Injectable } from '@nestjs/common';
import { Catalogue } from '../catalogue/catalogue.js';
import { Clock } from '../clock.js';
import { countedLifts } from '../custody/lift-counts.js';
import { staysOnJob, wasOutOn, type Stay } from '../custody/stays.js';
import { reportedDefects, reportedEvents } from '../inspections/records-of-items.js';
import { jobLines } from '../jobs/job-lines.js';
import { loadJob } from '../jobs/load-job.js';
import { itemBriefs, type ItemBrief } from '../register/item-briefs.js';
import { toDay } from '../rules/calendar/day.js';
import { INSPECTION_TYPES } from '../rules/gear/gear.js';
import { Reads } from '../storage/reads.js';
import type { FiledDefectView, FiledEventView, FiledItemView, GearFileView } from './gear-file.dto.js';
import { asTraced, tracedRecords, type TracedRecord } from './traced-records.js';

/** What was recorded about the item of a stay. */
interface Recorded {
  readonly item: ItemBrief;
  readonly lineLabel: string;
  readonly records: readonly TracedRecord[];
  readonly defects: readonly FiledDefectView[];
  readonly events: readonly FiledEventView[];
}

/** The complete file of a job's gear: every item that was out on it with its marks, papers, checks and returns. */
@Injectable()
export class GearFiles {
  constructor(
    private readonly reads: Reads,
    private readonly catalogue: Catalogue,
    private readonly clock: Clock,
  ) {}

  /** @throws Problem `not_found`. */
  async ofJob(jobId: number): Promise<GearFileView> {
    const { manager } = this.reads;
    const job = await loadJob(manager, jobId);
    const result = jobLines(job, this.catalogue);
    const labels = new Map(result.ok ? result.lines.map(({ key, label }) => [key, label]) : []);
    const stays = await staysOnJob(manager, jobId, this.clock);
    const itemIds = [...new Set(stays.map(({ itemId }) => itemId))];
    const items = new Map((await itemBriefs(manager, itemIds)).map((item) => [item.id, item]));
    const records = await tracedRecords(manager, itemIds);
    const defects = (await reportedDefects(manager, itemIds)).map((defect) => {
      return { ...defect, reportedOn: this.clock.dayAt(defect.recordedAt, job.store.timeZone) };
    });
    const events = await reportedEvents(manager, itemIds);
    const { reference, name, site, loadOutDay, backDay, cancelled } = job;
    return {
      ...{ jobId, reference, name, site, loadOutDay, backDay, cancelled, storeName: job.store.name },
      items: stays.flatMap((stay) => {
        const item = items.get(stay.itemId);
        const ofItem = <Entry extends { readonly itemId: number }>(entries: readonly Entry[]) =>
          entries.filter(({ itemId }) => itemId === stay.itemId);
        if (!item) return [];
        const lineLabel = labels.get(stay.lineKey) ?? stay.lineKey;
        const recorded = { records: ofItem(records), defects: ofItem(defects), events: ofItem(events) };
        return [filed(stay, { item, lineLabel, ...recorded })];
      }),
      lifts: (await countedLifts(manager, [jobId])).map(({ onDay, lifts, recordedAt }) => {
        return { onDay, lifts, recordedAt };
      }),
    };
  }
}

function filed(stay: Stay, { item, lineLabel, records, defects, events }: Recorded): FiledItemView {
  const { tag, kind, maker, serial, batch, markings, storeName } = item;
  const isOfJob = (day: string) => wasOutOn(stay, toDay(day));
  const checks = records.filter(({ type, doneOn }) => type === 'preUseCheck' && isOfJob(doneOn));
  return {
    ...{ itemId: item.id, tag, kind, maker, serial, batch, markings, storeName, lineLabel },
    from: stay.from,
    ...(stay.through === undefined ? {} : { through: stay.through }),
    state: stay.state,
    returnRemarks: stay.returnRemarks,
    inspections: inForce(stay, records).map(asTraced),
    checks: checks.map(asTraced),
    defects: defects
      .filter(({ reportedOn }) => isOfJob(reportedOn))
      .map(({ id, severity, description, reportedOn }) => ({ id, severity, description, reportedOn })),
    events: events
      .filter(({ happenedOn }) => isOfJob(happenedOn))
      .map(({ type, happenedOn, remarks }) => ({ type, happenedOn, remarks })),
  };
}

/** The last record of each type from before the item went out, and all from while it was away. */
function inForce(stay: Stay, records: readonly TracedRecord[]): TracedRecord[] {
  const before = INSPECTION_TYPES.flatMap((type) => {
    const last = records.findLast((record) => record.type === type && record.doneOn < stay.from);
    return type === 'preUseCheck' || !last ? [] : [last];
  });
  const during = records.filter(({ type, doneOn }) => type !== 'preUseCheck' && wasOutOn(stay, doneOn));
  return [...before, ...during];
}
