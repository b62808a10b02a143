import { Injectable } from '@nestjs/common';
import { Catalogue } from '../catalogue/catalogue.js';
import { Clock } from '../clock.js';
import { badInput } from '../http/input.js';
import { recordEvent } from '../inspections/record-event.js';
import { jobLines } from '../jobs/job-lines.js';
import { loadJob, type Job } from '../jobs/load-job.js';
import { Ledger, type Change } from '../ledger/ledger.service.js';
import type { Actor } from '../people/actor.js';
import { lockItem, type LockedItem } from '../register/item-condition.js';
import { toDay, type Day } from '../rules/calendar/day.js';
import type { Duty } from '../rules/gear/gear.js';
import { CommitmentsService } from './commitments.service.js';
import type { JobEventDto, JobEventView } from './site-use.dto.js';
import { staysOnJob, wasOutOn, type Stay } from './stays.js';

/** What a load hangs on or is held by: a shock to one of them went through all of them. Common practice, no source. */
const INVOLVED: readonly Duty[] = ['lifting', 'lashing'];

/** Shocks to the gear of a job: what was dropped or overloaded on site went through everything that held the load. */
@Injectable()
export class Shocks {
  constructor(
    private readonly ledger: Ledger,
    private readonly commitments: CommitmentsService,
    private readonly catalogue: Catalogue,
    private readonly clock: Clock,
  ) {}

  /**
   * Records the event for every item involved, in one change, and flags every job that counts on one of them. Without
   * a list: all that was out that day for lifting or lashing. What was scrapped meanwhile is left as it is.
   * @throws Problem `not_found`, `bad_input` of a day to come, of one on which nothing was out, of an item that was not.
   */
  async record(actor: Actor, jobId: number, input: JobEventDto): Promise<JobEventView> {
    return this.ledger.change(actor, async (change) => {
      await change.lock('job', [jobId]);
      const job = await loadJob(change.manager, jobId);
      const today = this.clock.today(job.store.timeZone);
      const itemIds = await this.involved(change, job, { input, today });
      const items = await lockInService(change, itemIds);
      const affected = new Map<number, string>();
      for (const item of items) {
        await recordEvent(change, item, input);
        const jobs = await this.commitments.flag(change, item, { because: 'event.recorded', today });
        for (const { jobId: id, reference } of jobs) affected.set(id, reference);
      }
      const { type, happenedOn, remarks } = input;
      change.note({
        action: 'job.shockRecorded',
        subjectKind: 'job',
        subjectId: jobId,
        detail: { job: job.reference, type, happenedOn, remarks, items: items.map(({ tag }) => tag) },
      });
      return {
        items: items.map(({ id, tag }) => ({ itemId: id, tag })),
        affectedJobs: [...affected].map(([id, reference]) => ({ jobId: id, reference })),
      };
    });
  }

  private async involved(
    change: Change,
    job: Job,
    { input: { happenedOn, itemIds }, today }: { input: JobEventDto; today: Day },
  ): Promise<number[]> {
    const field = 'happenedOn';
    if (happenedOn > today)
      throw badInput([{ field, message: `is in the future: today is ${today} at the store` }]);
    const stays = await staysOnJob(change.manager, job.id, this.clock);
    const out = stays.filter((stay) => wasOutOn(stay, toDay(happenedOn)));
    if (out.length === 0) throw badInput([{ field, message: 'nothing of the job was out on that day' }]);
    const duties = dutyOfLines(job, this.catalogue);
    const chosen = itemIds ? new Set(itemIds) : undefined;
    const stranger = itemIds?.find((id) => !out.some(({ itemId }) => itemId === id));
    if (stranger !== undefined)
      throw badInput([{ field: 'itemIds', message: `item ${stranger} was not out on the job that day` }]);
    const involved = out.filter((stay) => (chosen ? chosen.has(stay.itemId) : isInvolved(stay, duties)));
    return [...new Set(involved.map(({ itemId }) => itemId))];
  }
}

/** The duty of each line of a job; empty where the lines cannot be worked out, and then everything counts as involved. */
export function dutyOfLines(job: Job, catalogue: Catalogue): ReadonlyMap<string, Duty> {
  const result = jobLines(job, catalogue);
  return new Map(result.ok ? result.lines.map(({ key, duty }) => [key, duty]) : []);
}

/** Whether an item of a line is taken to be involved unless someone says otherwise: in doubt it is. */
export function isInvolved({ lineKey }: Pick<Stay, 'lineKey'>, duties: ReadonlyMap<string, Duty>): boolean {
  const duty = duties.get(lineKey);
  return duty === undefined || INVOLVED.includes(duty);
}

async function lockInService(change: Change, itemIds: readonly number[]): Promise<LockedItem[]> {
  await change.lock('item', itemIds);
  const items: LockedItem[] = [];
  for (const id of [...itemIds].sort((a, b) => a - b)) items.push(await lockItem(change, id));
  const kept = items.filter(({ condition }) => condition !== 'scrapped');
  if (kept.length > 0) return kept;
  throw badInput([
    { field: 'itemIds', message: 'nothing that was involved is still in the register to examine' },
  ]);
}
